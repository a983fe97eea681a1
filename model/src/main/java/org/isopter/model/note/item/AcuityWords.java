package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.SameAcuity;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.LowerCase;
import org.isopter.model.value.Outcome;

/** The words and forms of acuity. */
final class AcuityWords {

  /**
   * An acuity as it was seen.
   *
   * @param text the acuity as AcuityText reads it
   * @param bare whether it is a number whose notation must be said elsewhere
   * @param remark what was written of letters without a count of them; may be empty
   * @param inPart whether the line was read in part
   */
  record Seen(String text, boolean bare, String remark, boolean inPart) {
    Seen(String text, boolean bare) {
      this(text, bare, "", false);
    }

    static Seen whole(String text) {
      return new Seen(text, false);
    }

    Seen as(String other) {
      return new Seen(other, false, remark, inPart);
    }
  }

  static final PhraseTable<Correction> CORRECTIONS =
      PhraseTable.of(Correction.class)
          .say(
              Correction.UNAIDED,
              "sc",
              "UCVA",
              "uncorrected",
              "without correction",
              "without glasses")
          .say(Correction.HABITUAL, "cc", "with correction", "habitual correction")
          .say(Correction.SPECTACLES, "glasses", "gls", "specs", "with glasses", "with spectacles")
          .say(Correction.SPECTACLES, "cc glasses", "cc gls", "cc specs", "cc spectacles")
          .say(Correction.CONTACT_LENSES, "CL", "CLs", "contacts", "with contact lenses")
          .say(Correction.CONTACT_LENSES, "cc CL", "cc CLs", "cc contact lenses")
          .say(Correction.BEST, "BCVA", "best corrected", "best correction")
          .say(Correction.TRIAL_LENSES, "trial lenses", "in trial lenses", "with trial lenses");

  static final PhraseTable<Chart> CHARTS =
      PhraseTable.<Chart>empty()
          .say(Chart.SNELLEN, "snellen", "snellen chart")
          .say(Chart.ETDRS, "ETDRS", "ETDRS chart")
          .say(Chart.LOGMAR, "logMAR chart")
          .say(Chart.LANDOLT, "landolt", "landolt C", "landolt rings")
          .say(Chart.TUMBLING_E, "tumbling E")
          .say(Chart.SINGLE_LETTERS, "single letters")
          .say(Chart.PICTURES, "pictures", "picture chart")
          .say(Chart.NEAR_CARD, "near card")
          .say(Chart.OTHER, "other chart");

  static final PhraseTable<String> NOTATIONS =
      PhraseTable.<String>empty()
          .say("decimal", "decimal", "dec")
          .say("logMAR", "logMAR")
          .say("letters", "letters");

  private static final PhraseTable<LowVision> LOW =
      PhraseTable.<LowVision>empty()
          .say(
              LowVision.COUNTING_FINGERS,
              "CF",
              "counting fingers",
              "counts fingers",
              "count fingers")
          .say(LowVision.HAND_MOVEMENTS, "HM", "hand movements", "hand motion", "hand movement")
          .say(LowVision.LIGHT_PERCEPTION, "LP", "PL", "light perception")
          .say(LowVision.LIGHT_PERCEPTION_ACCURATE, "LP accurate", "PL accurate")
          .say(LowVision.LIGHT_PERCEPTION_INACCURATE, "LP inaccurate", "PL inaccurate")
          .say(
              LowVision.NO_LIGHT_PERCEPTION, "NLP", "NPL", "no light perception", "no PL", "no LP");

  private static final PhraseTable<Seen> NOT_IMPROVED =
      PhraseTable.<Seen>empty()
          .say(Seen.whole("NI"), "NI", "no improvement", "not improved", "does not improve");

  private static final Matcher<Seen> FRACTION = AcuityWords::fraction;

  private static final Matcher<Seen> BARE =
      cursor -> cursor.anyNumber().map(number -> bare(cursor, number.toPlainString()));

  /**
   * What is an acuity at distance even without a heading: low vision, and a fraction over the usual
   * distances or of the largest letters. 1/7 and 2/52 are days and weeks for many who write them.
   */
  static final Matcher<Seen> EVIDENT =
      ((Matcher<Seen>) cursor -> FRACTION.read(cursor).filter(AcuityWords::isUsual))
          .or(AcuityWords::low);

  static final Matcher<Seen> FAR = FRACTION.or(AcuityWords::low).or(BARE);

  /** A line of a chart, read whole. */
  static final Matcher<Seen> LINE = cursor -> FRACTION.read(cursor).filter(AcuityWords::isWhole);

  /** A line of a chart that names its notation. */
  static final Matcher<Seen> NAMED_LINE =
      LINE.or(
          cursor ->
              BARE.read(cursor)
                  .map(number -> withNotation(number, cursor))
                  .filter(line -> !line.bare() && isWhole(line)));

  /** A near acuity that names its notation, beside one at distance. */
  static final Matcher<Seen> PRINT =
      ((Matcher<Seen>)
              cursor -> cursor.take("n") ? cursor.number().map(n -> whole("N", n, "")) : none())
          .or(AcuityWords::jaeger);

  static final Matcher<Seen> CLOSE =
      FRACTION
          .or(cursor -> cursor.take("n") ? cursor.number().map(n -> whole("N", n, "")) : none())
          .or(AcuityWords::jaeger)
          .or(cursor -> cursor.number().filter(n -> cursor.take("m")).map(n -> whole("", n, " M")))
          .or(BARE);

  static final Matcher<Seen> THROUGH = NOT_IMPROVED.or(FAR);

  /** A pinhole acuity said beside the acuity itself, with its own notation if it has one. */
  static final Matcher<Outcome<Seen>> BESIDE =
      ((Matcher<Outcome<Seen>>)
              cursor ->
                  cursor.takeAny("ph", "pinhole") ? Common.outcome(named()).read(cursor) : none())
          .or(AcuityWords::improved)
          .or(AcuityWords::beforeItsWord);

  private AcuityWords() {}

  /**
   * Says whether an item starts with an eye and an acuity in tenths with a correction before or
   * behind it, which only an acuity has: R sc 0,4, L 8/10 glasses. A number with a point may be a
   * logMAR.
   */
  static boolean isInTenths(List<Token> item) {
    Cursor cursor = new Cursor(item, 0);
    boolean side = cursor.attempt(Common.SIDES).isPresent();
    cursor.takeAny(":", "=");
    boolean before = cursor.attempt(CORRECTIONS).isPresent();
    cursor.takeAny(":", "=");
    boolean comma = !cursor.atEnd() && !cursor.token().seen().equals(cursor.token().text());
    Optional<BigDecimal> number = cursor.anyNumber();
    boolean tenths = cursor.take("/") ? cursor.take("10") : comma && isBelowTwo(number);
    boolean behind = cursor.attempt(CORRECTIONS).isPresent();
    return side && number.isPresent() && tenths && (before || behind);
  }

  private static boolean isBelowTwo(Optional<BigDecimal> number) {
    return number
        .filter(one -> one.scale() > 0 && one.compareTo(BigDecimal.valueOf(2)) <= 0)
        .isPresent();
  }

  /** Says whether an eye saw no line of a chart. */
  static boolean isLow(Seen seen) {
    return LOW.words().stream()
        .anyMatch(word -> LowerCase.of(seen.text()).startsWith(LowerCase.of(word)));
  }

  /** Reads the power of the lenses for reading: with +2.50, c +2.50 add. */
  static Optional<String> readingLens(Cursor cursor) {
    boolean lead = cursor.takeAny("with", "c", "through", "using");
    boolean first = cursor.take("add");
    boolean plus = cursor.sees("+");
    Optional<BigDecimal> power = cursor.signed().filter(any -> lead && plus);
    boolean behind = !first && cursor.takeAny("add", "DS", "D");
    return power
        .filter(number -> number.scale() == 2)
        .map(number -> "with " + WrittenWords.signed(number) + (first || behind ? " add" : ""));
  }

  static Optional<Integer> lettersPerLine(Cursor cursor) {
    Optional<Integer> count = cursor.whole();
    boolean letters = cursor.take("letters");
    cursor.takeAny("per");
    boolean named = letters && cursor.take("line");
    return count.filter(any -> named);
  }

  /** Reads a pinhole acuity before its word: (6/6 ph), -> 20/25 PH, improving to 6/5 with ph. */
  private static Optional<Outcome<Seen>> improved(Cursor cursor) {
    boolean bracket = cursor.take("(");
    boolean arrow = cursor.take(List.of("-", ">")) || cursor.take(">") || cursor.take("improved");
    cursor.take("to");
    if (!bracket && !arrow) {
      return none();
    }
    Optional<Seen> seen = named().read(cursor);
    cursor.takeAny("with", "c");
    return seen.filter(any -> cursor.takeAny("ph", "pinhole")).map(Outcome::found);
  }

  /** Reads a pinhole acuity before its word, behind a comma: 20/40, 20/25 PH. */
  private static Optional<Outcome<Seen>> beforeItsWord(Cursor cursor) {
    boolean comma = cursor.isBehind(",");
    Optional<Seen> seen = comma ? cursor.attempt(LINE) : none();
    boolean named = seen.isPresent() && cursor.takeAny("ph", "pinhole");
    int end = cursor.place();
    cursor.take(",");
    boolean goesOn = cursor.attempt(THROUGH).isPresent();
    cursor.back(end);
    return seen.filter(any -> named && !goesOn).map(Outcome::found);
  }

  private static Matcher<Seen> named() {
    return cursor ->
        THROUGH.read(cursor).map(seen -> seen.bare() ? withNotation(seen, cursor) : seen);
  }

  private static Seen withNotation(Seen bare, Cursor cursor) {
    return cursor
        .attempt(NOTATIONS)
        .map(notation -> bare.as(bare.text() + " " + notation))
        .orElse(bare);
  }

  /** Reads a number, and that the line was read in part: 1.0p. */
  private static Seen bare(Cursor cursor, String number) {
    return new Seen(number, true, "", isInPart(cursor));
  }

  /** Reads a fraction; a dash before it is no sign: RE - 6/9. */
  private static Optional<Seen> fraction(Cursor cursor) {
    cursor.take("-");
    Optional<BigDecimal> distance = cursor.number();
    if (distance.isEmpty() || !cursor.take("/")) {
      return none();
    }
    return cursor.number().map(size -> fraction(cursor, distance.get(), size));
  }

  private static Seen fraction(Cursor cursor, BigDecimal distance, BigDecimal size) {
    String line = distance.toPlainString() + "/" + size.toPlainString();
    String letters = cursor.attempt(AcuityWords::suffix).orElse("");
    boolean inPart = letters.isEmpty() && isInPart(cursor);
    String more = cursor.attempt(AcuityWords::suffix).or(() -> uncounted(cursor)).orElse("");
    String unit = cursor.take("m") ? " m" : cursor.take("ft") ? " ft" : "";
    if (letters.isEmpty() && more.isEmpty() && !inPart) {
      cursor.attempt(seen -> SameAcuity.inBrackets(seen, distance, size));
    }
    String part = inPart ? "p" : "";
    return more.isEmpty()
        ? new Seen(line + letters + unit, false, "", inPart)
        : new Seen(line + unit, false, line + letters + part + more, false);
  }

  /** Reads that some letters of the line were missed: 6/9p, 6/9 partly. */
  private static boolean isInPart(Cursor cursor) {
    return (cursor.isClose() && cursor.takeAny("p", "pp", "pt"))
        || cursor.takeAny("partly", "part", "partial");
  }

  private static boolean isWhole(Seen line) {
    return !line.inPart() && line.remark().isEmpty();
  }

  private static boolean isUsual(Seen fraction) {
    boolean duration = fraction.text().matches("\\d+/(7|52)|[1-5]/12");
    // Sets of plates have 11, 13, 14, 17 or 21 of them, and no line of a chart has.
    boolean plates = fraction.text().matches("\\d+/(11|13|14|17|21)");
    return !duration && !plates && fraction.text().matches("(6|20|3|4|5)/.*|[12]/60.*");
  }

  private static Optional<String> suffix(Cursor cursor) {
    Optional<String> twice = cursor.attempt(AcuityWords::twice);
    if (twice.isPresent()) {
      return twice;
    }
    return cursor
        .signed()
        .filter(letters -> letters.scale() == 0 && letters.signum() != 0)
        .filter(letters -> letters.abs().precision() == 1)
        .map(WrittenWords::signed);
  }

  /** Reads two signs as two letters (common practice, no source): 20/25--. */
  private static Optional<String> twice(Cursor cursor) {
    boolean fewer = cursor.isClose() && cursor.take(List.of("-", "-"));
    boolean more = !fewer && cursor.isClose() && cursor.take(List.of("+", "+"));
    return fewer ? Optional.of("-2") : more ? Optional.of("+2") : Optional.empty();
  }

  /** Reads a sign without a number, or a mark behind a count, close behind: 6/9-, 6/9-1p. */
  private static Optional<String> uncounted(Cursor cursor) {
    if (!cursor.isClose()) {
      return Optional.empty();
    }
    String mark = cursor.token().text();
    return cursor.takeAny("-", "+", "p", "f", "pt", "partly")
        ? Optional.of(mark)
        : Optional.empty();
  }

  private static Optional<Seen> low(Cursor cursor) {
    return LOW.read(cursor)
        .map(low -> Seen.whole(WrittenWords.join(low.abbreviation(), shownAt(cursor))));
  }

  private static String shownAt(Cursor cursor) {
    return cursor
        .attempt(Common.AT_DISTANCE.or(Common::length))
        .map(quantity -> quantity.toString())
        .orElse("");
  }

  private static Optional<Seen> jaeger(Cursor cursor) {
    if (!cursor.take("j")) {
      return none();
    }
    return cursor.number().map(type -> whole("J", type, plus(cursor, type)));
  }

  private static String plus(Cursor cursor, BigDecimal type) {
    return type.compareTo(BigDecimal.ONE) == 0 && cursor.take("+") ? "+" : "";
  }

  private static Seen whole(String before, BigDecimal number, String behind) {
    return Seen.whole(before + number.toPlainString() + behind);
  }

  private static <T> Optional<T> none() {
    return Optional.empty();
  }
}
