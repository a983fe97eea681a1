package org.isopter.model.note.grammar;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.isopter.model.note.token.ClockTime;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.token.Worded;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What every item shares: sides, reasons for absence, times, and lengths. */
public final class Common {

  /** Both eyes open: the one way of naming both that can only be one test with both. */
  public static final String BOTH_OPEN = "BEO";

  /** Each of the two eyes, where they might be tested together. */
  static final String EACH = "each";

  public static final PhraseTable<Site> SIDES =
      PhraseTable.<Site>empty()
          .say(Site.RIGHT, "R", "right", "right eye", "R eye", "OD", "RE", "Rt", "Rt eye")
          .say(Site.LEFT, "L", "left", "left eye", "L eye", "OS", "LE", "Lt", "Lt eye")
          .say(Site.BOTH, "OU", "both", "both eyes", "B", "BE", BOTH_OPEN, EACH);

  public static final PhraseTable<Absence> ABSENCES =
      PhraseTable.of(Absence.class).say(Absence.NOT_APPLICABLE, "n/a");

  static final Slot<Absence> ABSENCE = Slot.value("reason for absence", ABSENCES);

  /** How much of a sign there is, for which the record has no place but a remark. */
  public static final Slot<String> DEGREE =
      Slot.value(
          "degree",
          PhraseTable.<String>empty()
              .say("partial", "partial")
              .say("complete", "complete")
              .say("mild", "mild", "slight", "minimal", "subtle", "small")
              .say("fatigable", "fatigable", "fatiguable")
              .say("moderate", "moderate")
              .say("marked", "marked", "severe", "gross", "obvious", "definite", "dense")
              .or(Common::graded));

  /** That a finding did not change, for which the record has no place but a remark. */
  public static final Slot<String> COURSE =
      Slot.condition(
          "course",
          PhraseTable.<String>empty()
              .say("more on the right", "R > L")
              .say("more on the left", "L > R")
              .say("unchanged", "unchanged")
              .say("stable", "stable", "static"));

  /** Why nothing was tested, for which the record has no place but a remark. */
  static final Slot<Boolean> REASON = Slot.condition("reason", Common::reason);

  static final Slot<ClockTime> TIME = Slot.condition("time", ClockTime::read);

  static final PhraseTable<Unit> LENGTHS =
      PhraseTable.<Unit>empty()
          .say(Unit.METRE, "m", "metre", "metres", "meter", "meters")
          .say(Unit.CENTIMETRE, "cm")
          .say(Unit.MILLIMETRE, "mm")
          .say(Unit.FOOT, "ft", "foot", "feet", "'", "\u2019")
          .say(Unit.INCH, "in", "inch", "inches");

  /** A number of millimetres, its unit stated. */
  public static final Matcher<Quantity> MILLIMETRES =
      cursor ->
          cursor
              .anyNumber()
              .filter(n -> cursor.take("mm"))
              .map(n -> new Quantity(n, Unit.MILLIMETRE));

  /** A number of millimetres, where no other unit is used. */
  public static final Matcher<Quantity> BARE_MILLIMETRES =
      MILLIMETRES.or(
          cursor ->
              cursor
                  .anyNumber()
                  .filter(n -> !cursor.sees("cm") && !cursor.sees("/") && !cursor.sees("%"))
                  .map(n -> new Quantity(n, Unit.MILLIMETRE)));

  /** The distance of a test: at 6 m, @ 40 cm. */
  public static final Matcher<Quantity> AT_DISTANCE =
      cursor -> cursor.takeAny("@", "at") ? length(cursor) : Optional.empty();

  private static final int LONGEST_REASON = 5;

  /** The last words of those that say why there is no value. */
  private static final Set<String> ABSENCE_ENDS =
      ABSENCES.words().stream()
          .map(Lexer::words)
          .map(words -> words.get(words.size() - 1))
          .collect(Collectors.toUnmodifiableSet());

  private Common() {}

  /** Returns the eye, or both, that a single token names. */
  public static Optional<Site> side(Token token) {
    return new Cursor(List.of(token), 0).attempt(SIDES);
  }

  /** Says whether an eye, or both, is named among words. */
  public static boolean namesSide(List<Token> words) {
    return IntStream.range(0, words.size())
        .anyMatch(at -> new Cursor(words, at).attempt(SIDES).isPresent());
  }

  /** Reads a few words behind "due to", or a dash, or in brackets; none names an eye or counts. */
  private static Optional<Boolean> reason(Cursor cursor) {
    boolean behind = isBehindAbsence(cursor);
    boolean bracket = behind && cursor.take("(");
    boolean lead =
        cursor.take(List.of("due", "to"))
            || cursor.take(List.of("because", "of"))
            || bracket
            || (behind && cursor.take("-"));
    int start = cursor.place();
    while (lead && isReason(cursor)) {
      cursor.back(cursor.place() + 1);
    }
    int words = cursor.place() - start;
    boolean ends = bracket ? cursor.take(")") : cursor.atEnd() || cursor.sees(",");
    return Optional.of(true).filter(any -> ends && words > 0 && words <= LONGEST_REASON);
  }

  /** Says whether words for something not done stand just before, perhaps with an eye between. */
  private static boolean isBehindAbsence(Cursor cursor) {
    int here = cursor.place();
    boolean eye = here > 1 && cursor.isBehindOne(token -> side(token).isPresent());
    cursor.back(eye ? here - 1 : here);
    boolean absence = cursor.isBehindOne(token -> ABSENCE_ENDS.contains(token.text()));
    cursor.back(here);
    return absence;
  }

  private static boolean isReason(Cursor cursor) {
    return !cursor.atEnd()
        && cursor.token().kind() == Token.Kind.WORD
        && side(cursor.token()).isEmpty();
  }

  /** Reads a grade from 1+ to 4+ (common practice, no source). */
  private static Optional<String> graded(Cursor cursor) {
    return cursor
        .attempt(
            seen ->
                seen.whole()
                    .filter(grade -> grade > 0 && grade < 5 && seen.isClose() && seen.take("+")))
        .map(grade -> grade + "+")
        .or(() -> cursor.attempt(Common::pluses))
        .or(() -> cursor.attempt(Common::namedGrade));
  }

  /** Reads a grade from 1 to 4 behind its word, of a scale that is not named: grade 2. */
  public static Optional<String> namedGrade(Cursor cursor) {
    return cursor.take("grade")
        ? cursor.whole().filter(grade -> grade > 0 && grade < 5).map(grade -> "grade " + grade)
        : Optional.empty();
  }

  /** Reads two to four signs: ++. */
  public static Optional<String> pluses(Cursor cursor) {
    int count = 0;
    while (cursor.take("+")) {
      count++;
    }
    return Optional.of(count + "+").filter(any -> !any.equals("0+") && !any.equals("1+"));
  }

  /**
   * Reads a share in percent. Its sign may go unsaid where the number is above 10: a share of ten
   * is told on a scale to 10 as well.
   */
  public static Optional<Quantity> share(Cursor cursor) {
    Optional<BigDecimal> number = cursor.number();
    boolean percent = cursor.take("%");
    boolean other = cursor.sees("/") || cursor.sees("of") || cursor.sees("-") || cursor.sees("+");
    return number
        .filter(n -> percent || (!other && n.compareTo(BigDecimal.TEN) > 0))
        .map(n -> new Quantity(n, Unit.PERCENT));
  }

  /** Returns a matcher of a capital N for normal; a small one may be the start of a word. */
  public static Matcher<Boolean> capitalN() {
    return cursor ->
        Optional.of(true)
            .filter(any -> !cursor.atEnd() && cursor.token().seen().equals("N"))
            .filter(any -> cursor.take("n"));
  }

  /** Says whether a word joins what stands on either side of it. */
  public static boolean isConnector(Token token) {
    return WordFiles.is(WordRole.AND, token.text());
  }

  /** Takes a length, a number and its unit, where one stands here. */
  public static Optional<Quantity> length(Cursor cursor) {
    Optional<BigDecimal> number = cursor.number();
    return number.flatMap(n -> LENGTHS.read(cursor).map(unit -> new Quantity(n, unit)));
  }

  /** Returns a matcher of a value or of the reason why there is none. */
  public static <T> Matcher<Outcome<T>> outcome(Matcher<T> value) {
    return value.map(Outcome::<T>found).or(ABSENCES.map(Outcome::<T>absent));
  }

  /** Returns a matcher of a value or of the reason why there is none, behind one of the leads. */
  public static <T> Matcher<Outcome<T>> behind(Matcher<T> value, String... leads) {
    Matcher<Outcome<T>> outcome = outcome(value);
    List<List<String>> phrases = Arrays.stream(leads).map(Lexer::words).toList();
    return new Worded<>(
        cursor -> lead(cursor, phrases) ? outcome.read(cursor) : Optional.empty(), value.words());
  }

  /** Returns a matcher of the same in which a value may stand without its lead. */
  public static <T> Matcher<Outcome<T>> named(Matcher<T> value, String... leads) {
    return new Worded<>(
        Common.<T>behind(value, leads).or(value.map(Outcome::<T>found)), value.words());
  }

  private static boolean lead(Cursor cursor, List<List<String>> leads) {
    return leads.stream().anyMatch(cursor::take);
  }
}
