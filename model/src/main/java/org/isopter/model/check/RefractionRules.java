package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.catalogue.Refractions.Cylinder;
import org.isopter.model.catalogue.Refractions.Refraction;
import org.isopter.model.exam.EyeView;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;

/** Rules about the refraction. */
final class RefractionRules {

  private static final Set<Concept> WITH_TRIAL_LENSES =
      Set.of(RefractionMethod.SUBJECTIVE, RefractionMethod.RETINOSCOPY);
  private static final BigDecimal EIGHTH = new BigDecimal("0.125");
  private static final BigDecimal ROUNDED = new BigDecimal("0.005");
  private static final BigDecimal HALF = new BigDecimal("0.5");
  private static final BigDecimal STRONG_SPHERE = BigDecimal.valueOf(20);
  private static final BigDecimal STRONG_CYLINDER = BigDecimal.valueOf(6);
  private static final BigDecimal STRONG_ADDITION = BigDecimal.valueOf(4);

  private RefractionRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        noCylinderButAxis(),
        lensOffStep(),
        lensVeryStrong(),
        additionVeryStrong(),
        additionsDiffer(),
        cylinderSignsMixed());
  }

  private static ConsistencyRule noCylinderButAxis() {
    return contradictory("no-cylinder-but-axis", Severity.WARNING)
        .what("A cylinder of 0 D has an axis.")
        .why("A lens without a cylinder has no axis; the number would be read as one.")
        .on(Refractions.REFRACTION)
        .wanted("no cylinder and no axis, or the power of the cylinder")
        .suggest("leave both out")
        .eachEye(
            eye ->
                eye.seen(Refractions.REFRACTION, RefractionRules::isFlat)
                    .map(seen -> Breach.of(seen).in("cylinder")));
  }

  private static boolean isFlat(Refraction refraction) {
    return refraction.cylinder().filter(one -> one.power().value().signum() == 0).isPresent();
  }

  private static ConsistencyRule lensOffStep() {
    return implausible("lens-off-step", Severity.WARNING)
        .what("A power found with trial lenses is no multiple of 0.125 D.")
        .why("Trial lenses come in steps of 0.125 or 0.25 D; other digits are mostly slips.")
        .source("common practice, no source; 0.12 and 0.37 are read as eighths")
        .on(Refractions.REFRACTION)
        .wanted("a multiple of 0.125 D, such as -1.25 D")
        .suggest("check the digits; an automated refraction is stated by its method")
        .eachEye(
            eye ->
                eye.seen(Refractions.REFRACTION, RefractionRules::isOffStep)
                    .filter(
                        seen ->
                            seen.fact().method().filter(WITH_TRIAL_LENSES::contains).isPresent())
                    .map(Breach::of));
  }

  private static boolean isOffStep(Refraction refraction) {
    return powers(refraction).anyMatch(RefractionRules::isOffStep);
  }

  private static Stream<Quantity> powers(Refraction refraction) {
    return Stream.of(
            Optional.of(refraction.sphere()),
            refraction.cylinder().map(Cylinder::power),
            refraction.addition())
        .flatMap(Optional::stream);
  }

  private static boolean isOffStep(Quantity power) {
    BigDecimal steps = power.value().divide(EIGHTH, 0, RoundingMode.HALF_UP);
    return steps.multiply(EIGHTH).subtract(power.value()).abs().compareTo(ROUNDED) > 0;
  }

  private static ConsistencyRule lensVeryStrong() {
    return implausible("lens-very-strong", Severity.INFORMATION)
        .what("A sphere is beyond 20 D or a cylinder beyond 6 D.")
        .why("Such eyes are rare; a lost decimal point is not.")
        .on(Refractions.REFRACTION)
        .wanted("at most 20 D of sphere and 6 D of cylinder, or a remark")
        .settledByRemark()
        .suggest("check the decimal points")
        .eachEye(
            eye -> eye.seen(Refractions.REFRACTION, RefractionRules::isStrong).map(Breach::of));
  }

  private static boolean isStrong(Refraction refraction) {
    return isBeyond(refraction.sphere(), STRONG_SPHERE)
        || refraction
            .cylinder()
            .filter(cylinder -> isBeyond(cylinder.power(), STRONG_CYLINDER))
            .isPresent();
  }

  private static ConsistencyRule additionVeryStrong() {
    return implausible("addition-very-strong", Severity.INFORMATION)
        .what("A reading addition is above 4 D.")
        .why("It is a magnifier and not a reading addition, or a slip of a digit.")
        .on(Refractions.REFRACTION)
        .wanted("an addition of at most 4 D, or a remark")
        .settledByRemark()
        .suggest("say in the remarks that it is for low vision")
        .eachEye(
            eye ->
                eye.seen(Refractions.REFRACTION, RefractionRules::isStrongAddition)
                    .map(seen -> Breach.of(seen).in("addition")));
  }

  private static boolean isStrongAddition(Refraction refraction) {
    return refraction.addition().filter(add -> isBeyond(add, STRONG_ADDITION)).isPresent();
  }

  private static boolean isBeyond(Quantity power, BigDecimal limit) {
    return power.value().abs().compareTo(limit) > 0;
  }

  private static ConsistencyRule additionsDiffer() {
    return implausible("additions-differ", Severity.INFORMATION)
        .what("The reading additions of the two eyes differ by 0.5 D or more.")
        .why("Both eyes lose their focus at one pace; an artificial lens or a palsy may differ.")
        .on(Refractions.REFRACTION)
        .wanted("additions less than 0.5 D apart, or a remark")
        .settledByRemark()
        .suggest("balance the distance refraction again")
        .pair(both -> pairs(both, RefractionRules::isOtherAddition));
  }

  private static boolean isOtherAddition(Refraction one, Refraction other) {
    return one.addition()
        .flatMap(
            right ->
                other
                    .addition()
                    .filter(
                        left -> right.value().subtract(left.value()).abs().compareTo(HALF) >= 0))
        .isPresent();
  }

  private static ConsistencyRule cylinderSignsMixed() {
    return implausible("cylinder-signs-mixed", Severity.WARNING)
        .what("The cylinder of one eye is plus and that of the other minus.")
        .why("A refraction is written in one form; mixed signs are mostly a lost minus.")
        .on(Refractions.REFRACTION)
        .wanted("cylinders of one sign")
        .suggest("check the signs; transpose one where both forms were meant")
        .pair(both -> pairs(both, RefractionRules::isOtherSign));
  }

  private static boolean isOtherSign(Refraction one, Refraction other) {
    return sign(one) * sign(other) < 0;
  }

  private static int sign(Refraction refraction) {
    return refraction.cylinder().map(cylinder -> cylinder.power().value().signum()).orElse(0);
  }

  private static Stream<Breach> pairs(EyeView both, BiPredicate<Refraction, Refraction> which) {
    return both.exam()
        .pairs(Refractions.REFRACTION)
        .filter(pair -> which.test(pair.right().value(), pair.left().value()))
        .map(pair -> Breach.of(pair.right(), pair.left()));
  }
}
