package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyePair;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Signs that are on a list of urgent findings when they are new, which no record says. */
final class UrgentWhenNew {

  static final String UNKNOWN =
      "; the record does not say in a form that can be read here whether ";

  /** The largest letter of most charts, in logMAR (common practice, no source). */
  private static final double SIX_SIXTY = 1;

  private static final BigDecimal FIFTY = BigDecimal.valueOf(50);

  private UrgentWhenNew() {}

  static Stream<String> of(ExamView exam) {
    return Stream.of(OpenEye.of(exam), thirdNerve(exam), sightLost(exam), arteritis(exam))
        .flatMap(Optional::stream);
  }

  private static Optional<String> thirdNerve(ExamView exam) {
    List<String> beside = new ArrayList<>();
    if (exam.eyes().anyMatch(UrgentWhenNew::hasLowLid)) {
      beside.add("a low upper lid");
    }
    if (isDouble(exam)) {
      beside.add("double vision");
    }
    if (exam.eyes().anyMatch(UrgentWhenNew::movesLess)) {
      beside.add("an eye that moves less");
    }
    if (areUnequal(exam)) {
      return beside.isEmpty()
          ? Optional.empty()
          : Optional.of(
              "Unequal pupils with "
                  + PlainWords.list(beside)
                  + " are on the list when they are new and painful"
                  + UNKNOWN
                  + "they are.");
    }
    boolean oneEye = exam.eyes().anyMatch(eye -> hasLowLid(eye) && movesLess(eye));
    return oneEye
        ? Optional.of(
            "A low upper lid of an eye that moves less is on the list when it is new and painful,"
                + " with equal pupils too"
                + UNKNOWN
                + "it is.")
        : Optional.empty();
  }

  private static boolean hasLowLid(EyeView eye) {
    return eye.has(Lids.PTOSIS, lid -> lid.presence() == Presence.PRESENT);
  }

  private static boolean movesLess(EyeView eye) {
    return eye.has(
        Movements.DUCTIONS,
        moves -> moves.grades().values().stream().anyMatch(UrgentWhenNew::isLess));
  }

  private static boolean isLess(Outcome<Integer> grade) {
    return grade.ifFound().filter(found -> found < 0).isPresent();
  }

  private static boolean isDouble(ExamView exam) {
    return exam.both().has(Movements.DIPLOPIA, seen -> seen.kind() == DoubleVision.BINOCULAR);
  }

  /** Drops that widen a pupil explain why it is larger; what measuring gives is no difference. */
  private static boolean areUnequal(ExamView exam) {
    return Stream.concat(
            exam.both().seen(Pupils.EQUALITY, pupils -> pupils != PupilEquality.EQUAL),
            exam.pairs(Pupils.SIZE).filter(UrgentWhenNew::differ).map(EyePair::right))
        .anyMatch(unequal -> exam.notLater(Drops.DILATION, unequal.fact()).findAny().isEmpty());
  }

  /** Sizes are compared in one light and at one time; any pair of them that differs counts. */
  private static boolean differ(EyePair<Pupils.Size> sizes) {
    BigDecimal apart = millimetres(sizes.right()).subtract(millimetres(sizes.left())).abs();
    return apart.compareTo(Anisocoria.REPEATABILITY) > 0;
  }

  private static BigDecimal millimetres(Seen<Pupils.Size> seen) {
    return seen.value().diameter().value();
  }

  private static Optional<String> sightLost(ExamView exam) {
    List<String> eyes =
        exam.eyes()
            .filter(eye -> seesLittle(eye) || hasDefect(exam, eye))
            .map(eye -> PlainWords.eye(eye.site()))
            .toList();
    return eyes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Loss of sight is on the list when it is sudden and not explained: "
                + PlainWords.list(eyes)
                + UNKNOWN
                + "it is.");
  }

  /** Says whether no letter of a chart was read by an eye that is there. */
  private static boolean seesLittle(EyeView eye) {
    List<Seen<AcuityReading>> seen = eye.seen(Acuities.DISTANCE).toList();
    boolean low =
        !seen.isEmpty()
            && seen.stream().allMatch(one -> one.value().acuity() instanceof Acuity.Low);
    boolean offChart = seen.isEmpty() && eye.has(Acuities.BOUND, UrgentWhenNew::isBelowCharts);
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

  /** Where no age is stated, the person may be old enough. */
  private static Optional<String> arteritis(ExamView exam) {
    boolean lost = exam.eyes().anyMatch(eye -> seesLittle(eye) || hasDefect(exam, eye));
    return (lost || isDouble(exam)) && maybeFifty(exam)
        ? Optional.of(
            "Loss of sight or double vision from the age of 50 is on the list where temporal"
                + " arteritis is suspected"
                + UNKNOWN
                + "it is.")
        : Optional.empty();
  }

  private static boolean maybeFifty(ExamView exam) {
    return exam.exam()
        .header()
        .demographics()
        .age()
        .filter(age -> !age.unit().equals(Unit.YEAR) || age.value().compareTo(FIFTY) < 0)
        .isEmpty();
  }
}
