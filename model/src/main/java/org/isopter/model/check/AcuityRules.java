package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.NystagmusKind;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Site;

/** Rules between acuities: the pinhole, the two eyes together. */
final class AcuityRules {

  private static final String SUFFIXES =
      "two lines are 0.2 logMAR by definition; suffixes are not counted (DICOM PS3.17 RR.2.3)";

  private AcuityRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        reducedWithoutPinhole(),
        pinholeWorse(),
        notImprovedOfWhat(),
        pinholeFarBetter(),
        bothWorseThanBetterEye(),
        bothFarBetter());
  }

  private static ConsistencyRule reducedWithoutPinhole() {
    return incomplete("reduced-acuity-without-pinhole", Severity.WARNING)
        .what("The best acuity of an eye is worse than 6/9, and no pinhole or reason is stated.")
        .why("A pinhole tells an error of refraction from a fault of the eye or nerve.")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("a pinhole acuity, one through trial lenses, or why there is none")
        .settledByRemark()
        .suggest("add pinhole-acuity, if only { absent: not-done }, or a remark at the acuity")
        .eachEye(
            eye ->
                eye.seen(Acuities.DISTANCE)
                    .filter(
                        any ->
                            eye.isSilentOn(Acuities.PINHOLE)
                                && !Sight.isForReading(eye, any)
                                && eye.seen(Acuities.DISTANCE).allMatch(AcuityRules::isUnexplained))
                    .limit(1)
                    .map(Breach::of));
  }

  private static boolean isUnexplained(Seen<AcuityReading> seen) {
    return Sight.isWorseThanSixNine(seen.value())
        && !Sight.isBestCorrected(seen.value())
        && seen.fact().remarks().isEmpty();
  }

  private static ConsistencyRule pinholeWorse() {
    return implausible("pinhole-two-lines-worse", Severity.INFORMATION)
        .what("The acuity through a pinhole is two lines or more worse than without it.")
        .why("It happens with an opaque centre of the lens or a poor macula, and with a poor aim.")
        .source(SUFFIXES)
        .on(Acuities.PINHOLE, Acuities.DISTANCE)
        .wanted("a pinhole acuity less than two lines worse, or a remark")
        .settledByRemark()
        .suggest("repeat with several holes and good light, and check which eye was meant")
        .eachEye(
            eye ->
                eye.seen(Acuities.PINHOLE)
                    .flatMap(
                        hole ->
                            eye
                                .beside(
                                    hole,
                                    Acuities.DISTANCE,
                                    bare ->
                                        Sight.isMaybeSameCorrection(bare, hole.value())
                                            && Sight.isTwoLinesWorse(hole.value(), bare))
                                .map(bare -> Breach.of(hole, bare))
                                .stream()));
  }

  private static ConsistencyRule notImprovedOfWhat() {
    return incomplete("not-improved-of-what", Severity.WARNING)
        .what("A pinhole did not improve an acuity that is not stated.")
        .why("Not improved says nothing without the acuity it was compared with.")
        .on(Acuities.PINHOLE, Acuities.DISTANCE)
        .wanted("the distance acuity of the same eye through the same correction")
        .suggest("add the distance acuity, or correct the correction that is stated")
        .eachEye(
            eye ->
                eye.seen(Acuities.PINHOLE, one -> one.acuity() instanceof Acuity.NotImproved)
                    .filter(
                        none ->
                            eye.seen(
                                    Acuities.DISTANCE,
                                    one -> Sight.isMaybeSameCorrection(one, none.value()))
                                .findAny()
                                .isEmpty())
                    .map(Breach::of));
  }

  private static ConsistencyRule pinholeFarBetter() {
    return implausible("pinhole-far-better-than-corrected", Severity.INFORMATION)
        .what("A pinhole improves the best corrected acuity by two lines or more.")
        .why("What a pinhole still improves, lenses do: the correction was not the best.")
        .source(SUFFIXES)
        .on(Acuities.PINHOLE, Acuities.DISTANCE)
        .wanted("an acuity in trial lenses about that of the pinhole, or a remark")
        .settledByRemark()
        .suggest("refract again, and look at the cornea and the lens")
        .eachEye(
            eye ->
                eye.seen(Acuities.DISTANCE, Sight::isBestCorrected)
                    .flatMap(
                        best ->
                            eye
                                .beside(
                                    best,
                                    Acuities.PINHOLE,
                                    hole ->
                                        Sight.isBestCorrected(hole)
                                            && Sight.isTwoLinesWorse(best.value(), hole))
                                .map(hole -> Breach.of(hole, best))
                                .stream()));
  }

  private static ConsistencyRule bothFarBetter() {
    return implausible("both-eyes-far-better-than-each", Severity.INFORMATION)
        .what("Both eyes together see two lines or more better than each of them alone.")
        .why(
            "Two eyes see little better than the better one; nystagmus that appears when one is"
                + " covered makes more of it.")
        .source(SUFFIXES)
        .on(Acuities.DISTANCE)
        .wanted("an acuity of both eyes about that of the better eye, or a remark")
        .settledByRemark()
        .suggest("check the entries, and note nystagmus in the remarks")
        .pair(
            both ->
                both.seen(Acuities.DISTANCE)
                    .filter(two -> !hasNystagmus(both))
                    .filter(two -> Reflexes.eyes(both).allMatch(eye -> worse(eye, two).isPresent()))
                    .map(two -> Breach.of(two, worse(both.at(Site.RIGHT), two).orElseThrow())));
  }

  private static boolean hasNystagmus(EyeView both) {
    return both.exam()
        .seen(Movements.NYSTAGMUS)
        .anyMatch(seen -> seen.value().kind() != NystagmusKind.NONE);
  }

  /** Returns a reading of the eye that is two lines worse, where none of them is better. */
  private static Optional<Seen<AcuityReading>> worse(EyeView eye, Seen<AcuityReading> two) {
    boolean all =
        eye.seen(Acuities.DISTANCE, one -> Sight.isSameCorrection(one, two.value()))
            .allMatch(one -> Sight.isTwoLinesWorse(one.value(), two.value()));
    return eye.beside(two, Acuities.DISTANCE, one -> Sight.isSameCorrection(one, two.value()))
        .filter(any -> all);
  }

  private static ConsistencyRule bothWorseThanBetterEye() {
    return implausible("both-eyes-worse-than-one", Severity.WARNING)
        .what("Both eyes together see two lines or more worse than one of them alone.")
        .why("With both eyes open the better eye still sees; latent nystagmus does the opposite.")
        .source(SUFFIXES)
        .on(Acuities.DISTANCE)
        .wanted("an acuity of both eyes about that of the better eye")
        .settledByRemark()
        .suggest("check the entries, and note double vision or nystagmus in the remarks")
        .pair(
            both ->
                both.seen(Acuities.DISTANCE)
                    .flatMap(two -> Reflexes.eyes(both).flatMap(eye -> better(eye, two)).limit(1)));
  }

  private static Stream<Breach> better(EyeView eye, Seen<AcuityReading> two) {
    return eye
        .beside(
            two,
            Acuities.DISTANCE,
            one ->
                Sight.isSameCorrection(one, two.value()) && Sight.isTwoLinesWorse(two.value(), one))
        .map(one -> Breach.of(two, one))
        .stream();
  }
}
