package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Unit;

/** Acuity at distance, through a pinhole, and near. */
final class AcuityNotes {

  private static final Slot<Correction> CORRECTION =
      Slot.condition("correction", AcuityWords.CORRECTIONS);

  private static final Slot<Chart> CHART = Slot.condition("chart", AcuityWords.CHARTS);

  private static final Slot<Quantity> TEST_DISTANCE =
      Slot.condition("testing distance", Common.AT_DISTANCE);

  private static final Slot<Integer> LETTERS_PER_LINE =
      Slot.condition("letters of a line", AcuityWords::lettersPerLine);

  private static final Slot<String> NOTATION = Slot.condition("notation", AcuityWords.NOTATIONS);

  private static final Slot<AcuityWords.Seen> FAR = Slot.value("acuity", AcuityWords.FAR);

  private static final Slot<AcuityWords.Seen> ALONE = Slot.value("acuity", AcuityWords.EVIDENT);

  private static final Slot<AcuityWords.Seen> CLOSE = Slot.value("near acuity", AcuityWords.CLOSE);

  private static final Slot<AcuityWords.Seen> THROUGH =
      Slot.value("pinhole acuity", AcuityWords.THROUGH);

  private static final Slot<Outcome<AcuityWords.Seen>> BESIDE =
      Slot.value("pinhole acuity", AcuityWords.BESIDE);

  private static final Slot<AcuityWords.Seen> PRINT =
      Slot.valueOrShared("near acuity", AcuityWords.PRINT);

  /** What a language counts acuities in, where nothing else is said. */
  private static final Slot<String> TENTHS =
      Slot.condition("tenths", PhraseTable.<String>empty().say("decimal", "tenths"));

  /** The same of near acuities, of which a whole number may be a line of a card: Nieden 1. */
  private static final Slot<String> NEAR_TENTHS =
      Slot.condition("tenths", PhraseTable.<String>empty().say("decimal", "tenths"));

  static final Grammar DISTANCE =
      Grammar.of("distance acuity", "VA sc R 6/9 ph 6/6 L 6/12")
          .sides(Grammar.Sides.EACH_OR_ASKED)
          .startsWith("VA", "V", "vision", "acuity", "visual acuity", "DVA", "distance VA")
          .startsWith(
              AcuityWords.CORRECTIONS.words().stream().map(Heading::of).map(Heading::keptAsWord))
          .slots(FAR, BESIDE, PRINT, AcuityBoundNotes.BOUND)
          .slots(CORRECTION, CHART, TEST_DISTANCE, LETTERS_PER_LINE)
          .slots(NOTATION, TENTHS)
          .whole(Acuities.DISTANCE)
          .build(eye -> distance(eye, FAR));

  /** An acuity without a heading: only what can be nothing else, a fraction or low vision. */
  static final Grammar EVIDENT =
      Grammar.of("acuity without a heading", "R 6/9 ph 6/6")
          .sides(Grammar.Sides.EACH_OR_ASKED)
          .withoutCommonSlots()
          .slots(ALONE, BESIDE, PRINT, CORRECTION, Common.COURSE)
          .build(eye -> distance(eye, ALONE));

  private static final Grammar PINHOLE =
      Grammar.of("pinhole acuity", "PH sc R 6/6 L NI")
          .startsWith("PH", "pinhole", "pinhole VA")
          .slots(THROUGH, CORRECTION, CHART, TEST_DISTANCE, LETTERS_PER_LINE)
          .slots(NOTATION, TENTHS)
          .whole(Acuities.PINHOLE)
          .build(eye -> kept(eye, Acuities.PINHOLE, THROUGH));

  /** The lenses through which print was read, for which the record has no place but a remark. */
  private static final Slot<String> READING_LENS =
      Slot.condition("reading lens", AcuityWords::readingLens);

  private static final Grammar NEAR =
      Grammar.of("near acuity", "NV cc R N5 L N8 @ 40 cm")
          .sides(Grammar.Sides.EACH_OR_ASKED)
          .startsWith("NV", "near", "near vision", "near VA", "near acuity")
          .slots(CLOSE, CORRECTION, CHART, TEST_DISTANCE, LETTERS_PER_LINE, NOTATION)
          .slots(READING_LENS, NEAR_TENTHS)
          .whole(Acuities.NEAR)
          .build(
              eye -> {
                kept(eye, Acuities.NEAR, CLOSE);
                eye.remark(eye.find(READING_LENS).orElse(""));
              });

  static final List<Grammar> GRAMMARS =
      Stream.concat(Stream.of(DISTANCE, PINHOLE, NEAR), AcuityBoundNotes.GRAMMARS.stream())
          .toList();

  static final List<Wording<?>> WORDINGS =
      Stream.concat(
              Stream.of(
                  wording(Acuities.DISTANCE, "VA").where(AcuityNotes::valueAtDistance),
                  wording(Acuities.PINHOLE, "PH"),
                  wording(Acuities.NEAR, "NV")),
              AcuityBoundNotes.WORDINGS.stream())
          .toList();

  private AcuityNotes() {}

  private static void distance(Eye eye, Slot<AcuityWords.Seen> far) throws NotRead {
    Optional<AcuityWords.Seen> seen = eye.find(far);
    Optional<AcuityBoundNotes.Bound> bound = eye.find(AcuityBoundNotes.BOUND);
    if (bound.isPresent()) {
      bound(eye, bound.get());
      return;
    }
    if (eye.find(CHART).equals(Optional.of(Chart.NEAR_CARD))) {
      onNearCard(eye, far);
      return;
    }
    Optional<Outcome<AcuityWords.Seen>> through = eye.find(BESIDE);
    Optional<AcuityWords.Seen> print = eye.find(PRINT);
    if (seen.isPresent() || (through.isEmpty() && print.isEmpty())) {
      eye.found(Acuities.DISTANCE, reading(eye, eye.get(far)));
      eye.remark(eye.get(far).remark());
    }
    if (print.isPresent()) {
      near(eye, print.get());
    }
    if (through.isPresent()) {
      eye.outcome(Acuities.PINHOLE, reading(eye, through.get()));
      eye.remark(through.get().ifFound().map(AcuityWords.Seen::remark).orElse(""));
    }
  }

  /** Adds what was read from a near card, which is a near acuity whatever it is called. */
  private static void onNearCard(Eye eye, Slot<AcuityWords.Seen> slot) throws NotRead {
    AcuityWords.Seen seen = eye.get(slot);
    boolean far = eye.find(TEST_DISTANCE).filter(AcuityNotes::isFar).isPresent();
    if (far || eye.has(BESIDE) || eye.has(PRINT) || AcuityWords.isLow(seen)) {
      throw NotRead.because("it may be of the near card or of a test at distance");
    }
    kept(eye, Acuities.NEAR, slot);
  }

  /** Says whether a card that is held in the hand cannot be so far away. */
  private static boolean isFar(Quantity distance) {
    int farthest = distance.unit().equals(Unit.METRE) ? 1 : 3;
    boolean measured = distance.unit().equals(Unit.METRE) || distance.unit().equals(Unit.FOOT);
    return measured && distance.value().compareTo(BigDecimal.valueOf(farthest)) > 0;
  }

  /** Adds an acuity beyond a line, where nothing else is said of the eye. */
  private static void bound(Eye eye, AcuityBoundNotes.Bound bound) throws NotRead {
    if (eye.has(FAR) || eye.has(BESIDE) || eye.has(PRINT) || eye.has(LETTERS_PER_LINE)) {
      throw NotRead.because("it is an acuity that was read, or one beyond a line");
    }
    AcuityBoundNotes.found(
        eye, bound, eye.find(CORRECTION), eye.find(CHART), eye.find(TEST_DISTANCE));
  }

  /** Adds an acuity, and what was written of letters without a count of them. */
  private static void kept(Eye eye, Finding<AcuityReading> finding, Slot<AcuityWords.Seen> slot)
      throws NotRead {
    eye.found(finding, reading(eye, eye.get(slot)));
    eye.remark(eye.get(slot).remark());
  }

  /** Adds a near acuity beside one at distance; the chart and its distance are not its own. */
  private static void near(Eye eye, AcuityWords.Seen print) throws NotRead {
    AcuityReading plain = AcuityReading.of(AcuityText.parse(print.text()).orThrow());
    Optional<Correction> correction = eye.find(CORRECTION);
    eye.found(
        Acuities.NEAR,
        new AcuityReading(
            plain.acuity(), correction, Optional.empty(), Optional.empty(), Optional.empty()));
  }

  private static Outcome<AcuityReading> reading(Eye eye, Outcome<AcuityWords.Seen> outcome)
      throws NotRead {
    Optional<AcuityWords.Seen> seen = outcome.ifFound();
    return seen.isPresent()
        ? Outcome.found(reading(eye, seen.get()))
        : outcome.map(none -> AcuityReading.of(new Acuity.NotImproved()));
  }

  private static AcuityReading reading(Eye eye, AcuityWords.Seen seen) throws NotRead {
    Optional<Quantity> distance = eye.find(TEST_DISTANCE);
    String text = text(eye, seen);
    Result<Acuity> acuity = AcuityText.parse(text, distance);
    if (!acuity.isOk()) {
      throw NotRead.because(Eye.sentence(acuity.faults().get(0)));
    }
    return new AcuityReading(
        acuity.orThrow(),
        eye.find(CORRECTION),
        eye.find(CHART),
        distance,
        eye.find(LETTERS_PER_LINE),
        seen.inPart() ? Optional.of(true) : Optional.empty());
  }

  private static String text(Eye eye, AcuityWords.Seen seen) throws NotRead {
    boolean tenths =
        eye.find(TENTHS).isPresent()
            || (eye.find(NEAR_TENTHS).isPresent() && seen.text().contains("."));
    if (seen.bare()) {
      boolean named = eye.find(NOTATION).isPresent();
      return WrittenWords.join(
          seen.text(),
          tenths && !named && isDecimal(seen.text()) ? "decimal" : notation(eye, seen));
    }
    boolean ofTen = tenths && seen.text().matches("\\d\\d?/10");
    return ofTen ? tenth(seen.text()) + " decimal" : seen.text();
  }

  /** No eye sees more than 2.0 (common practice, no source); a 4 may be four of ten tenths. */
  private static boolean isDecimal(String number) {
    return new BigDecimal(number).compareTo(BigDecimal.valueOf(2)) <= 0;
  }

  private static String tenth(String fraction) {
    return new BigDecimal(fraction.substring(0, fraction.indexOf('/')))
        .movePointLeft(1)
        .toPlainString();
  }

  private static String notation(Eye eye, AcuityWords.Seen bare) throws NotRead {
    Optional<String> notation = eye.find(NOTATION);
    if (notation.isEmpty()) {
      throw NotRead.because(bare.text() + " may be a decimal, a logMAR or a count of letters")
          .write("VA R 0.5 decimal");
    }
    return notation.get();
  }

  private static Wording<AcuityReading> wording(Finding<AcuityReading> finding, String heading) {
    return Wording.of(finding, heading, AcuityNotes::whole)
        .where(AcuityNotes::value)
        .under(AcuityNotes::conditions);
  }

  private static String conditions(AcuityReading reading) {
    return WrittenWords.join(
        WrittenWords.maybe(reading.correction(), AcuityWords.CORRECTIONS::phrase),
        WrittenWords.maybe(reading.chart(), AcuityWords.CHARTS::phrase),
        WrittenWords.maybeQuantity("@", reading.distance()),
        WrittenWords.maybe(reading.lettersPerLine(), count -> count + " letters per line"));
  }

  /** Returns the same at distance; beside a near card it would be taken for a near acuity. */
  private static Optional<String> valueAtDistance(AcuityReading reading) {
    boolean near = reading.chart().equals(Optional.of(Chart.NEAR_CARD));
    return value(reading).filter(any -> !near);
  }

  /** Returns the acuity; that it was read in part is said of a line without a count of letters. */
  private static Optional<String> value(AcuityReading reading) {
    if (reading.readInPart().isEmpty()) {
      return Optional.of(whole(reading));
    }
    boolean line = reading.acuity() instanceof Acuity.Fraction one && one.letters() == 0;
    boolean sayable = line || reading.acuity() instanceof Acuity.DecimalFraction;
    return Optional.of(reading)
        .filter(any -> sayable && any.isInPart())
        .map(any -> whole(any).replaceFirst("^[0-9./]+", "$0p"));
  }

  /** Returns the acuity; its unit is named where the testing distance would suggest another. */
  private static String whole(AcuityReading reading) {
    String text = reading.acuity().toString();
    boolean clear = AcuityText.parse(text, reading.distance()).equals(Result.ok(reading.acuity()));
    return !clear && reading.acuity() instanceof Acuity.Fraction fraction
        ? text + " " + fraction.unit().text()
        : text;
  }
}
