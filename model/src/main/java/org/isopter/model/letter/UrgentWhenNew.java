package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyePair;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Unit;

/** Signs that are on a list of urgent findings when they are new, which no record says. */
final class UrgentWhenNew {

  private static final BigDecimal FIFTY = BigDecimal.valueOf(50);

  private UrgentWhenNew() {}

  /** Returns what no record says, to stand behind a sentence. */
  static String unknown(String what) {
    return "; whether " + what + " cannot be read here.";
  }

  static Stream<String> of(ExamView exam) {
    return Stream.of(OpenEye.of(exam), thirdNerve(exam), LostSight.of(exam), arteritis(exam))
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
                  + unknown("they are"));
    }
    boolean oneEye = exam.eyes().anyMatch(eye -> hasLowLid(eye) && movesLess(eye));
    return oneEye
        ? Optional.of(
            "A low upper lid of an eye that moves less is on the list when it is new and painful,"
                + " with equal pupils too"
                + unknown("it is"))
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

  /** Where no age is stated, the person may be old enough. */
  private static Optional<String> arteritis(ExamView exam) {
    return (LostSight.of(exam).isPresent() || isDouble(exam)) && maybeFifty(exam)
        ? Optional.of(
            "Loss of sight or double vision from the age of 50 is on the list where temporal"
                + " arteritis is suspected"
                + unknown("it is"))
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
