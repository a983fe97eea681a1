package org.isopter.model.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** Exchanges the eyes of an examination. */
final class Mirror {

  private static final Map<DefectSide, DefectSide> SIDES =
      Map.of(
          DefectSide.RIGHT, DefectSide.LEFT,
          DefectSide.LEFT, DefectSide.RIGHT,
          DefectSide.NONE, DefectSide.NONE,
          DefectSide.EQUIVOCAL, DefectSide.EQUIVOCAL);

  private static final Map<PupilEquality, PupilEquality> LARGER =
      Map.of(
          PupilEquality.RIGHT_LARGER, PupilEquality.LEFT_LARGER,
          PupilEquality.LEFT_LARGER, PupilEquality.RIGHT_LARGER);

  private Mirror() {}

  static Exam of(Exam exam) {
    List<Fact<?>> facts =
        exam.facts().stream().<Fact<?>>map(Mirror::of).collect(Collectors.toList());
    return new Exam(exam.header(), facts);
  }

  private static <V> Fact<V> of(Fact<V> fact) {
    Outcome<V> outcome =
        fact.finding() == Pupils.AFFERENT_DEFECT
            ? exchanged(fact)
            : fact.finding() == Pupils.EQUALITY ? larger(fact) : fact.outcome();
    Site eye = fact.site().fellow();
    return outcome
        .fold(
            value -> Fact.of(fact.finding(), eye, value),
            reason -> Fact.absent(fact.finding(), eye, reason))
        .with(fact.method(), fact.at(), fact.device())
        .remarks(fact.remarks());
  }

  private static <V> Outcome<V> larger(Fact<V> fact) {
    Optional<EncodedValue> panel = fact.panel();
    if (panel.isEmpty()) {
      return fact.outcome();
    }
    PupilEquality judged = Pupils.EQUALITY.layout().decode(panel.get()).orThrow();
    PupilEquality other = LARGER.getOrDefault(judged, judged);
    EncodedValue exchanged = Pupils.EQUALITY.layout().encode(other);
    return Outcome.found(fact.finding().layout().decode(exchanged).orThrow());
  }

  private static <V> Outcome<V> exchanged(Fact<V> fact) {
    Optional<EncodedValue> panel = fact.panel();
    if (panel.isEmpty()) {
      return fact.outcome();
    }
    Pupils.AfferentDefect defect = Pupils.AFFERENT_DEFECT.layout().decode(panel.get()).orThrow();
    Pupils.AfferentDefect other =
        new Pupils.AfferentDefect(SIDES.get(defect.side()), defect.grade(), defect.logUnits());
    EncodedValue exchanged = Pupils.AFFERENT_DEFECT.layout().encode(other);
    return Outcome.found(fact.finding().layout().decode(exchanged).orThrow());
  }
}
