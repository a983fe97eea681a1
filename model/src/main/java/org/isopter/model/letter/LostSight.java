package org.isopter.model.letter;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Site;

/**
 * Sight that is lost: no letters, an afferent defect, or a part of the field in which nothing is
 * seen.
 */
final class LostSight {

  /** The largest letter of most charts, in logMAR (common practice, no source). */
  private static final double SIX_SIXTY = 1;

  private LostSight() {}

  static Optional<String> of(ExamView exam) {
    List<String> eyes =
        exam.eyes()
            .filter(eye -> seesLittle(eye) || hasDefect(exam, eye) || lacksField(eye))
            .map(eye -> PlainWords.eye(eye.site()))
            .toList();
    return eyes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Loss of sight is on the list when it is sudden and not explained: "
                + PlainWords.list(eyes)
                + UrgentWhenNew.unknown("it is"));
  }

  /** Says whether no letter of a chart was read by an eye that is there. */
  private static boolean seesLittle(EyeView eye) {
    List<Seen<AcuityReading>> seen = eye.seen(Acuities.DISTANCE).toList();
    boolean low =
        !seen.isEmpty()
            && seen.stream().allMatch(one -> one.value().acuity() instanceof Acuity.Low);
    boolean offChart = seen.isEmpty() && eye.has(Acuities.BOUND, LostSight::isBelowCharts);
    return (low || offChart)
        && !readsThroughPinhole(eye)
        && !eye.has(Globes.STATE, GlobeState::isSightless);
  }

  /** What letters a pinhole shows, lenses are likely to show. */
  private static boolean readsThroughPinhole(EyeView eye) {
    return eye.has(
        Acuities.PINHOLE, reading -> AcuityScale.logMar(reading.acuity()).orElse(2) <= SIX_SIXTY);
  }

  private static boolean isBelowCharts(AcuityBound bound) {
    double line = AcuityScale.logMar(bound.line()).orElse(0);
    return bound.isWorse() && line > SIX_SIXTY - AcuityScale.LINE_TOLERANCE;
  }

  /** A defect that is suspected is on the list as well. */
  private static boolean hasDefect(ExamView exam, EyeView eye) {
    DefectSide side = eye.site() == Site.RIGHT ? DefectSide.RIGHT : DefectSide.LEFT;
    return !eye.has(Globes.STATE, GlobeState::isSightless)
        && exam.both()
            .has(
                Pupils.AFFERENT_DEFECT,
                defect ->
                    defect.side() == side
                        || defect.suspected().equals(Pupils.suspectedEye(eye.site())));
  }

  private static boolean lacksField(EyeView eye) {
    return eye.has(
        Fields.CONFRONTATION,
        field ->
            field.regions().values().stream()
                .anyMatch(
                    region -> region.ifFound().filter(FieldResponse.ABSENT::equals).isPresent()));
  }
}
