package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DrugEffect;
import org.isopter.model.answer.pupil.TestDrug;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.exam.EyeView;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;

/** Rules about the lens, the cornea, the lid and the answer of a pupil to a drug. */
final class TissueRules {

  private static final BigDecimal DEEP = BigDecimal.valueOf(20);
  private static final BigDecimal ALMOST_ALL = BigDecimal.valueOf(95);

  private TissueRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        noLensButLens(),
        noLensButOpacity(),
        flatSteeperThanSteep(),
        lidThatDoesNotRise(),
        drugTheWrongWay(),
        apraclonidineWidensLarger(),
        drugAgainstSizes(),
        deepFieldButFullIndex());
  }

  private static ConsistencyRule noLensButLens() {
    return contradictory("no-lens-but-artificial-lens", Severity.WARNING)
        .what("An eye is said to have no lens and an artificial one.")
        .why("Without a lens means that none was put in.")
        .on(Segments.ANTERIOR)
        .wanted("one of the two")
        .suggest("remove the one that does not hold")
        .eachEye(eye -> together(eye, AnteriorSign.NO_LENS, AnteriorSign.ARTIFICIAL_LENS));
  }

  private static ConsistencyRule noLensButOpacity() {
    return contradictory("no-lens-but-opacity", Severity.WARNING)
        .what("An eye is said to have no lens and an opacity of it.")
        .why("What is left behind a lens that was taken out is its capsule.")
        .on(Segments.ANTERIOR)
        .wanted("one of the two, or a remark on the capsule")
        .settledByRemark()
        .suggest("name the capsule in the remarks where that is meant")
        .eachEye(eye -> together(eye, AnteriorSign.NO_LENS, AnteriorSign.LENS_OPACITY));
  }

  private static Stream<Breach> together(EyeView eye, AnteriorSign one, AnteriorSign other) {
    Finding<Segments.Sign<AnteriorSign>> signs = Segments.ANTERIOR;
    return Breach.clash(
        eye, signs, seen -> isThere(seen, one), signs, seen -> isThere(seen, other));
  }

  private static boolean isThere(Segments.Sign<AnteriorSign> seen, AnteriorSign sign) {
    return seen.sign() == sign && seen.presence() == Presence.PRESENT;
  }

  private static ConsistencyRule flatSteeperThanSteep() {
    return contradictory("flat-steeper-than-steep", Severity.ERROR)
        .what("The flatter meridian of a cornea has the greater power.")
        .why("The steeper meridian is the one of the greater power, by definition.")
        .on(Corneas.CURVATURE)
        .wanted("the smaller power as the flatter one")
        .suggest("exchange the two; check whether radii in mm were written as dioptres")
        .eachEye(
            eye ->
                eye.seen(
                        Corneas.CURVATURE,
                        one -> one.flat().value().compareTo(one.steep().value()) > 0)
                    .map(Breach::of));
  }

  private static ConsistencyRule lidThatDoesNotRise() {
    return implausible("lid-does-not-rise-but-no-ptosis", Severity.WARNING)
        .what("The levator moves the lid by 2 mm or less, and no ptosis is stated.")
        .why("A lid that nothing lifts hangs; a brow that lifts it hides that.")
        .on(Lids.LEVATOR, Lids.PTOSIS)
        .wanted("ptosis, or more levator function")
        .settledByRemark()
        .suggest("measure again with the brow held down")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Lids.LEVATOR,
                    TissueRules::isAlmostNone,
                    Lids.PTOSIS,
                    ptosis -> ptosis.presence() == Presence.ABSENT));
  }

  private static boolean isAlmostNone(Quantity travel) {
    return travel.value().compareTo(BigDecimal.valueOf(2)) <= 0;
  }

  private static ConsistencyRule drugTheWrongWay() {
    return implausible("drug-the-wrong-way", Severity.WARNING)
        .what("Pilocarpine is said to widen a pupil, or a drug that widens to narrow it.")
        .why(
            "Pilocarpine narrows; cocaine, hydroxyamfetamine and phenylephrine widen. Apraclonidine"
                + " may do either.")
        .on(Drops.TEST)
        .wanted("unchanged, or a change in the direction of the drug")
        .settledByRemark()
        .suggest("check the drug, the eye, and the light of both measurements")
        .eachEye(eye -> eye.seen(Drops.TEST, TissueRules::isWrongWay).map(Breach::of));
  }

  private static boolean isWrongWay(Drops.DrugTest test) {
    return switch (test.drug()) {
      case PILOCARPINE -> test.effect() == DrugEffect.WIDER;
      case APRACLONIDINE -> false;
      case COCAINE, HYDROXYAMFETAMINE, PHENYLEPHRINE_WEAK -> test.effect() == DrugEffect.NARROWER;
    };
  }

  private static ConsistencyRule apraclonidineWidensLarger() {
    return implausible("apraclonidine-widens-larger", Severity.WARNING)
        .what("Apraclonidine widens the pupil that was the larger of the two before.")
        .why("It widens the pupil whose sympathetic supply is lost, and that is the smaller one.")
        .source("Bremner 2019, Front Neurol 10:55")
        .on(Drops.TEST)
        .wanted("the smaller pupil wider after it, or neither")
        .settledByRemark()
        .suggest("check the sides, and whether the sizes before and after were exchanged")
        .eachEye(
            eye ->
                eye.seen(Drops.TEST, TissueRules::isWidenedByApraclonidine)
                    .flatMap(
                        wide ->
                            eye
                                .fellow()
                                .beside(wide, Drops.TEST, fellow -> isSmaller(fellow, wide.value()))
                                .map(fellow -> Breach.of(wide, fellow))
                                .stream()));
  }

  private static boolean isWidenedByApraclonidine(Drops.DrugTest test) {
    return test.drug() == TestDrug.APRACLONIDINE && test.effect() == DrugEffect.WIDER;
  }

  /** Says whether a pupil was the smaller by more than measuring errs, before the same drug. */
  private static boolean isSmaller(Drops.DrugTest one, Drops.DrugTest other) {
    return one.drug() == other.drug()
        && one.before()
            .flatMap(size -> other.before().map(more -> more.value().subtract(size.value())))
            .filter(apart -> apart.compareTo(Anisocoria.REPEATABILITY) > 0)
            .isPresent();
  }

  private static ConsistencyRule drugAgainstSizes() {
    return contradictory("drug-effect-against-sizes", Severity.WARNING)
        .what("A pupil is called wider after a drug and measured narrower, or the opposite.")
        .why("The word says what the two sizes say.")
        .on(Drops.TEST)
        .wanted("a word and two sizes that go together")
        .suggest("check whether the sizes before and after were exchanged")
        .eachEye(eye -> eye.seen(Drops.TEST, TissueRules::isAgainstSizes).map(Breach::of));
  }

  private static boolean isAgainstSizes(Drops.DrugTest test) {
    if (test.before().isEmpty() || test.after().isEmpty()) {
      return false;
    }
    int change = test.after().get().value().compareTo(test.before().get().value());
    return switch (test.effect()) {
      case WIDER -> change <= 0;
      case NARROWER -> change >= 0;
      case UNCHANGED -> false;
    };
  }

  private static ConsistencyRule deepFieldButFullIndex() {
    return contradictory("deep-mean-deviation-but-full-index", Severity.WARNING)
        .what("A mean deviation of 20 dB or more stands beside a field index of 95 % or more.")
        .why("The index is the share of a full field that is left.")
        .on(Perimetry.MEAN_DEVIATION, Perimetry.FIELD_INDEX)
        .wanted("two figures of one test")
        .suggest("check whether both are of the same eye and test")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Perimetry.MEAN_DEVIATION,
                    deviation -> deviation.abs().compareTo(DEEP) >= 0,
                    Perimetry.FIELD_INDEX,
                    index -> index.compareTo(ALMOST_ALL) >= 0));
  }
}
