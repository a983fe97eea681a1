package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Outcome;

/** Rules about an acuity beside what else the eye sees, or what it sees through. */
final class SightRules {

  private static final List<FieldRegion> QUADRANTS =
      List.of(
          FieldRegion.SUPEROTEMPORAL,
          FieldRegion.SUPERONASAL,
          FieldRegion.INFEROTEMPORAL,
          FieldRegion.INFERONASAL);

  /** A sphere from here on leaves an unaided eye far from 6/6. */
  private static final int SHORT_SIGHTED = -3;

  private SightRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        noPlatesButSharp(),
        fieldLostButSharp(),
        lightButFieldFull(),
        correctedWorse(),
        shortSightedButSharp());
  }

  private static ConsistencyRule noPlatesButSharp() {
    return implausible("no-plates-but-sharp", Severity.WARNING)
        .what("An eye that reads 6/6 reads no Ishihara plate.")
        .why("The first plate is read by whoever sees it; who reads 6/6 sees it.")
        .on(Colours.PLATES, Acuities.DISTANCE)
        .wanted("the plates that were read, or why the test could not be done")
        .settledByRemark()
        .suggest("show the first plate again and ask for the number or its outline")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Colours.PLATES,
                    plates -> plates.test() == ColourTest.ISHIHARA && plates.correct() == 0,
                    Acuities.DISTANCE,
                    Sight::isSixSix));
  }

  private static ConsistencyRule fieldLostButSharp() {
    return implausible("field-lost-but-sharp", Severity.WARNING)
        .what("An eye that reads 6/6 sees nothing in all four quadrants, its centre untested.")
        .why("A small island at the centre may be left, and is then worth a word.")
        .on(Fields.CONFRONTATION, Acuities.DISTANCE)
        .wanted("the centre as tested, or a remark")
        .settledByRemark()
        .suggest("test the centre, and the field at two distances")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Fields.CONFRONTATION,
                    field -> areAll(field, FieldResponse.ABSENT) && isCentreUntested(field),
                    Acuities.DISTANCE,
                    Sight::isSixSix));
  }

  private static boolean areAll(Fields.Confrontation field, FieldResponse response) {
    return QUADRANTS.stream()
        .allMatch(one -> Outcome.found(response).equals(field.regions().get(one)));
  }

  private static boolean isCentreUntested(Fields.Confrontation field) {
    return Optional.ofNullable(field.regions().get(FieldRegion.CENTRAL))
        .flatMap(Outcome::ifFound)
        .isEmpty();
  }

  private static ConsistencyRule lightButFieldFull() {
    return contradictory("hand-or-light-but-field-full", Severity.WARNING)
        .what("An eye that sees no more than a hand or a light has a full field by other targets.")
        .why("A field is full for a target that the eye can see; that was not said to be one.")
        .on(Fields.CONFRONTATION, Acuities.DISTANCE)
        .wanted("the target that was shown, a hand or a light, or a better acuity")
        .suggest("state what was shown in the field")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Fields.CONFRONTATION,
                    field -> areAll(field, FieldResponse.FULL) && isOfUnknownTarget(field),
                    Acuities.DISTANCE,
                    Sight::isHandOrLight));
  }

  /** Fingers that were counted have a rule of their own. */
  private static boolean isOfUnknownTarget(Fields.Confrontation field) {
    return field.target().isEmpty()
        || field.target().filter(FieldTarget.RED_TARGET::equals).isPresent();
  }

  private static ConsistencyRule correctedWorse() {
    return implausible("corrected-worse-than-unaided", Severity.INFORMATION)
        .what("An eye sees two lines or more worse through what is worn than without it.")
        .why("Glasses may be wrong or for near, and the two lines may have been exchanged.")
        .on(Acuities.DISTANCE)
        .wanted("an acuity through the correction no worse than without, or a remark")
        .settledByRemark()
        .suggest("check which line was read through which correction")
        .eachEye(
            eye ->
                eye.seen(Acuities.DISTANCE, SightRules::isCorrected)
                    .flatMap(
                        worn ->
                            eye
                                .beside(
                                    worn,
                                    Acuities.DISTANCE,
                                    bare ->
                                        isUnaided(bare)
                                            && Sight.isTwoLinesWorse(worn.value(), bare))
                                .map(bare -> Breach.of(worn, bare))
                                .stream()));
  }

  private static boolean isCorrected(AcuityReading reading) {
    return reading.correction().isPresent() && !isUnaided(reading);
  }

  private static boolean isUnaided(AcuityReading reading) {
    return reading.correction().filter(Correction.UNAIDED::equals).isPresent();
  }

  private static ConsistencyRule shortSightedButSharp() {
    return implausible("short-sighted-but-sharp", Severity.WARNING)
        .what("An eye that needs -3 D or more reads 6/6 at distance unaided.")
        .why("Unaided it sees clearly up to a third of a metre.")
        .on(Refractions.REFRACTION, Acuities.DISTANCE)
        .wanted("a correction beside the acuity, or a weaker lens")
        .settledByRemark()
        .suggest("check whether glasses were worn, the sign of the lens, and which eye was meant")
        .eachEye(eye -> eye.seen(Refractions.REFRACTION).flatMap(lens -> sharp(eye, lens)));
  }

  private static Stream<Breach> sharp(EyeView eye, Seen<Refractions.Refraction> lens) {
    boolean strong = lens.value().sphere().value().doubleValue() <= SHORT_SIGHTED;
    boolean weakened =
        lens.value().cylinder().filter(one -> one.power().value().signum() > 0).isPresent();
    return eye
        .beside(lens, Acuities.DISTANCE, one -> isUnaided(one) && Sight.isSixSix(one))
        .filter(any -> strong && !weakened)
        .map(acuity -> Breach.of(lens, acuity))
        .stream();
  }
}
