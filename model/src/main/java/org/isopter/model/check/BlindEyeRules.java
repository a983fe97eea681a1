package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Acuity;

/** Rules about what an eye sees in other tests that sees no light, or no shapes. */
final class BlindEyeRules {

  private static final List<Finding<?>> SHAPES =
      List.of(VisualFunctions.CONTRAST, VisualFunctions.GRID, VisualFunctions.PHOTOSTRESS);

  private BlindEyeRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        noLightButPlates(),
        noLightButRed(),
        noLightButField(),
        noLightButPrint(),
        noLightButPinhole(),
        noLightButRefraction(),
        noLightButSeen(),
        noLightButFollows(),
        handOrLightButShapes());
  }

  /** Completes a rule that an eye without light perception breaks by what it sees. */
  private static <V> ConsistencyRule rule(
      ConsistencyRule.Draft draft, Finding<V> finding, Predicate<? super V> sees) {
    return draft.on(finding, Acuities.DISTANCE).eachEye(eye -> seen(eye, finding, sees));
  }

  private static ConsistencyRule noLightButPlates() {
    return rule(
        impossible("no-light-but-plates")
            .what("An eye without light perception reads colour plates.")
            .why("Plates are read by sight.")
            .wanted("no plate read, or an acuity at which plates can be read")
            .suggest("check whether the fellow eye was covered, and which eye was meant"),
        Colours.PLATES,
        plates -> plates.correct() > 0);
  }

  private static ConsistencyRule noLightButRed() {
    return rule(
        impossible("no-light-but-red")
            .what("An eye without light perception sees some red.")
            .why("Colour is seen by light.")
            .wanted("0 %, or absent as not applicable")
            .suggest("check which eye was meant"),
        Colours.RED_SATURATION,
        red -> red.value().signum() > 0);
  }

  private static ConsistencyRule noLightButField() {
    return rule(
        impossible("no-light-but-field")
            .what("An eye without light perception sees a target in its field.")
            .why("A target in the field is seen by light.")
            .wanted("absent in every region, or an acuity of light perception or better")
            .suggest("check whether the fellow eye was covered, and which eye was meant"),
        Fields.CONFRONTATION,
        field ->
            field.regions().values().stream()
                .flatMap(outcome -> outcome.ifFound().stream())
                .anyMatch(response -> response != FieldResponse.ABSENT));
  }

  private static ConsistencyRule noLightButPrint() {
    return rule(
        impossible("no-light-but-print")
            .what("An eye without light perception reads print.")
            .why("Print is read by sight.")
            .wanted("near acuity absent, or an acuity at which print can be read")
            .suggest("check which eye was meant"),
        Acuities.NEAR,
        any -> true);
  }

  private static ConsistencyRule noLightButPinhole() {
    return rule(
        impossible("no-light-but-pinhole")
            .what("An eye without light perception sees something through a pinhole.")
            .why("A pinhole takes light away; it gives none.")
            .wanted("no pinhole acuity, or an acuity of light perception or better")
            .suggest("check which eye was meant"),
        Acuities.PINHOLE,
        BlindEyeRules::isSomethingSeen);
  }

  private static boolean isSomethingSeen(AcuityReading reading) {
    return !(reading.acuity() instanceof Acuity.NotImproved) && !Sight.isNoLight(reading);
  }

  private static ConsistencyRule noLightButRefraction() {
    return implausible("no-light-but-subjective-refraction", Severity.WARNING)
        .what("An eye without light perception has a refraction that the person chose.")
        .why("Choosing between lenses needs sight.")
        .on(Refractions.REFRACTION, Acuities.DISTANCE)
        .wanted("no subjective refraction, or another method")
        .settledByRemark()
        .suggest("say in the remarks where a lens that balances is meant")
        .eachEye(
            eye ->
                seen(eye, Refractions.REFRACTION, any -> true)
                    .filter(
                        breach ->
                            breach
                                .where()
                                .method()
                                .filter(RefractionMethod.SUBJECTIVE::equals)
                                .isPresent()));
  }

  private static ConsistencyRule noLightButSeen() {
    return impossible("no-light-but-seen")
        .what(
            "An eye without light perception sees contrast, a grid, brightness, a moving target or"
                + " letters after a bright light.")
        .why("Each of these is seen by light.")
        .on(
            VisualFunctions.CONTRAST,
            VisualFunctions.GRID,
            VisualFunctions.PHOTOSTRESS,
            Colours.BRIGHTNESS,
            Colours.ACROSS_MERIDIAN,
            FieldFeatures.ISOPTER,
            Acuities.DISTANCE)
        .wanted("none of them, or an acuity of light perception or better")
        .suggest("check whether the fellow eye was covered, and which eye was meant")
        .eachEye(
            eye ->
                Stream.of(
                        shapes(eye, Sight::isNoLight),
                        seen(eye, Colours.BRIGHTNESS, one -> one.value().signum() > 0),
                        seen(eye, Colours.ACROSS_MERIDIAN, any -> true),
                        seen(eye, FieldFeatures.ISOPTER, BlindEyeRules::isSeenSomewhere))
                    .flatMap(breaches -> breaches));
  }

  private static boolean isSeenSomewhere(FieldFeatures.Isopter isopter) {
    return isopter.extents().values().stream().anyMatch(far -> far.value().signum() > 0);
  }

  private static <V> Stream<Breach> seen(
      EyeView eye, Finding<V> finding, Predicate<? super V> what) {
    return Breach.clash(eye, finding, what, Acuities.DISTANCE, Sight::isNoLight);
  }

  private static Stream<Breach> shapes(EyeView eye, Predicate<AcuityReading> acuity) {
    return SHAPES.stream()
        .flatMap(shape -> Breach.clash(eye, shape, any -> true, Acuities.DISTANCE, acuity));
  }

  private static ConsistencyRule noLightButFollows() {
    return contradictory("no-light-but-follows", Severity.WARNING)
        .what("An eye without light perception fixes, follows or prefers a grating.")
        .why(
            "Whoever fixes or follows sees. An entry may be wrong; in a loss of sight that is"
                + " functional an eye follows what it is said not to see.")
        .on(VisualFunctions.FIXATION, VisualFunctions.PREFERENTIAL_LOOKING, Acuities.DISTANCE)
        .wanted("no fixation and no grating, or an acuity of light perception or better")
        .settledByRemark()
        .suggest("check the acuity and the eye, and whether the fellow eye was covered")
        .eachEye(
            eye ->
                Stream.concat(
                    seen(eye, VisualFunctions.FIXATION, BlindEyeRules::isFixing),
                    seen(eye, VisualFunctions.PREFERENTIAL_LOOKING, any -> true)));
  }

  private static boolean isFixing(VisualFunctions.Fixation fixation) {
    return Stream.of(fixation.central(), fixation.maintained(), fixation.follows())
        .flatMap(Optional::stream)
        .anyMatch(yes -> yes);
  }

  private static ConsistencyRule handOrLightButShapes() {
    return contradictory("hand-or-light-but-shapes", Severity.WARNING)
        .what(
            "An eye that sees no more than a hand or a light sees contrast, a grid, or letters after"
                + " a bright light.")
        .why("These are tests with letters and lines, which are finer than a hand.")
        .on(
            VisualFunctions.CONTRAST,
            VisualFunctions.GRID,
            VisualFunctions.PHOTOSTRESS,
            Acuities.DISTANCE)
        .wanted("none of them, or an acuity at which shapes are seen")
        .settledByRemark()
        .suggest("check the eye, and through which correction each was seen")
        .eachEye(eye -> shapes(eye, Sight::isHandOrLight));
  }
}
