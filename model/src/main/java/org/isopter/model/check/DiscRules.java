package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.math.BigDecimal;
import java.util.List;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Discs.Swelling;

/** Rules about the optic disc. */
final class DiscRules {

  private static final String FRISEN = "modified Frisen scale: Neuro-Ophthalmology 2023;47:177";
  private static final BigDecimal APART = new BigDecimal("0.3");
  private static final BigDecimal LARGE = new BigDecimal("0.5");

  private DiscRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        notSwollenButGraded(),
        swollenButGradeZero(),
        swollenButClear(),
        swollenButCupped(),
        swollenButPulsating(),
        cupsApart());
  }

  private static ConsistencyRule notSwollenButGraded() {
    return ConsistencyRule.impossible("not-swollen-but-graded")
        .what("Swelling of a disc is absent and has a Frisen grade above 0.")
        .why("Grade 0 is the disc without swelling; every other grade is one with it.")
        .source(FRISEN)
        .on(Discs.SWELLING)
        .wanted("grade 0 or none where swelling is absent")
        .suggest("correct the grade or the swelling")
        .eachEye(
            eye ->
                eye.seen(Discs.SWELLING, one -> is(one, Presence.ABSENT) && isGrade(one, 1, 5))
                    .map(one -> Breach.of(one).in("frisen-grade")));
  }

  private static ConsistencyRule swollenButGradeZero() {
    return contradictory("swollen-but-grade-zero", Severity.WARNING)
        .what("A disc is swollen and has Frisen grade 0.")
        .why("Grade 0 is a normal disc; swelling that is no papilloedema has no grade.")
        .source(FRISEN)
        .on(Discs.SWELLING)
        .wanted("a grade of 1 to 5, or none")
        .suggest("leave the grade out where the scale does not apply")
        .eachEye(
            eye ->
                eye.seen(Discs.SWELLING, one -> is(one, Presence.PRESENT) && isGrade(one, 0, 0))
                    .map(one -> Breach.of(one).in("frisen-grade")));
  }

  private static ConsistencyRule swollenButClear() {
    return contradictory("swollen-but-margin-clear", Severity.WARNING)
        .what("A disc is swollen and its margin is clear.")
        .why("Swelling blurs the margin, first on the nasal side, upper and lower poles.")
        .source(FRISEN)
        .on(Discs.MARGIN, Discs.SWELLING)
        .wanted("a margin that is partly-blurred or blurred")
        .suggest("look at the nasal margin and the poles again")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Discs.MARGIN,
                    DiscMargin.CLEAR::equals,
                    Discs.SWELLING,
                    one -> is(one, Presence.PRESENT)));
  }

  private static ConsistencyRule swollenButCupped() {
    return implausible("swollen-but-cupped", Severity.WARNING)
        .what("A disc of Frisen grade 3 or more has a cup-disc ratio above 0.5.")
        .why("Swelling of that grade fills or hides the cup, unless the cup was large before.")
        .source(FRISEN)
        .on(Discs.VERTICAL_CUP, Discs.SWELLING)
        .wanted("a smaller ratio, or absent: unable where the cup cannot be seen")
        .settledByRemark()
        .suggest("check whether the ratio was copied from an earlier visit")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Discs.VERTICAL_CUP,
                    ratio -> ratio.compareTo(LARGE) > 0,
                    Discs.SWELLING,
                    one -> isGrade(one, 3, 5)));
  }

  private static ConsistencyRule swollenButPulsating() {
    return implausible("swollen-but-pulsating", Severity.WARNING)
        .what("A disc of Frisen grade 2 or more has spontaneous venous pulsation.")
        .why("Raised pressure about the nerve stops it; it may return when the pressure falls.")
        .on(Discs.VENOUS_PULSATION, Discs.SWELLING)
        .wanted("absent or equivocal, or a remark that it was seen beyond doubt")
        .settledByRemark()
        .suggest("look again; small movements of the eye imitate pulsation")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Discs.VENOUS_PULSATION,
                    Presence.PRESENT::equals,
                    Discs.SWELLING,
                    one -> isGrade(one, 2, 5)));
  }

  private static ConsistencyRule cupsApart() {
    return implausible("cup-ratios-apart", Severity.WARNING)
        .what("The vertical and the horizontal cup-disc ratio of a disc differ by more than 0.3.")
        .why("Cups are oval by a little; a larger difference is mostly a slip of a digit.")
        .on(Discs.HORIZONTAL_CUP, Discs.VERTICAL_CUP)
        .wanted("ratios at most 0.3 apart, or a remark")
        .settledByRemark()
        .suggest("check both digits and the eye")
        .eachEye(
            eye ->
                eye.seen(Discs.HORIZONTAL_CUP)
                    .flatMap(
                        across ->
                            eye
                                .beside(
                                    across,
                                    Discs.VERTICAL_CUP,
                                    down ->
                                        down.subtract(across.value()).abs().compareTo(APART) > 0)
                                .map(down -> Breach.of(across, down))
                                .stream()));
  }

  private static boolean is(Swelling swelling, Presence presence) {
    return swelling.presence() == presence;
  }

  private static boolean isGrade(Swelling swelling, int least, int most) {
    return swelling.frisen().filter(grade -> grade >= least && grade <= most).isPresent();
  }
}
