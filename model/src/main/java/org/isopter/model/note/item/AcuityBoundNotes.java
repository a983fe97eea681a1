package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Term;

/** An acuity worse or better than a line. */
final class AcuityBoundNotes {

  /** A line and on which side of it the acuity lies. */
  record Bound(Term side, String line) {}

  private static final Slot<Correction> CORRECTION =
      Slot.condition("correction", AcuityWords.CORRECTIONS);

  private static final Slot<Chart> CHART = Slot.condition("chart", AcuityWords.CHARTS);

  private static final Slot<Quantity> TEST_DISTANCE =
      Slot.condition("testing distance", Common.AT_DISTANCE);

  private static final PhraseTable<Term> SIDES =
      WordLists.vocabulary(Acuities.BOUND, "side-of-line", word -> word + " than");

  /** Signs of numbers say it of a fraction alone: a smaller logMAR is a better acuity. */
  private static final PhraseTable<Term> OF_FRACTIONS =
      PhraseTable.<Term>empty()
          .say(side("worse"), "<", "less than", "below")
          .say(side("better"), ">", "more than");

  /** An acuity beyond a line, as it may stand among others: VA R worse than 6/60 L 6/6. */
  static final Slot<Bound> BOUND = Slot.value("acuity beyond a line", AcuityBoundNotes::bound);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("acuity beyond a line", "VA beyond line R worse than 6/60")
              .sides(Grammar.Sides.EACH_OR_ASKED)
              .startsWith("VA beyond line")
              .slots(BOUND, CORRECTION, CHART, TEST_DISTANCE)
              .whole(Acuities.BOUND)
              .build(
                  eye ->
                      found(
                          eye,
                          eye.get(BOUND),
                          eye.find(CORRECTION),
                          eye.find(CHART),
                          eye.find(TEST_DISTANCE))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Acuities.BOUND, "VA beyond line", AcuityBoundNotes::value)
              .under(AcuityBoundNotes::conditions));

  private AcuityBoundNotes() {}

  static void found(
      Eye eye,
      Bound bound,
      Optional<Correction> correction,
      Optional<Chart> chart,
      Optional<Quantity> distance)
      throws NotRead {
    Result<Acuity> line = AcuityText.parse(bound.line(), distance);
    if (!line.isOk()) {
      throw NotRead.because(Eye.sentence(line.faults().get(0)));
    }
    eye.found(
        Acuities.BOUND, new AcuityBound(line.orThrow(), bound.side(), correction, chart, distance));
  }

  private static Term side(String word) {
    return WordLists.answer(SIDES, word + " than");
  }

  private static Optional<Bound> bound(Cursor cursor) {
    Optional<Term> sign = cursor.attempt(OF_FRACTIONS);
    if (sign.isPresent()) {
      return AcuityWords.LINE.read(cursor).map(line -> new Bound(sign.get(), line.text()));
    }
    return SIDES
        .read(cursor)
        .flatMap(
            side -> AcuityWords.NAMED_LINE.read(cursor).map(line -> new Bound(side, line.text())));
  }

  private static String value(AcuityBound bound) {
    return SIDES.phrase(bound.side()) + " " + AcuityText.write(bound.line(), bound.distance());
  }

  private static String conditions(AcuityBound bound) {
    return WrittenWords.join(
        WrittenWords.maybe(bound.correction(), AcuityWords.CORRECTIONS::phrase),
        WrittenWords.maybe(bound.chart(), AcuityWords.CHARTS::phrase),
        WrittenWords.maybeQuantity("@", bound.distance()));
  }
}
