package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.util.List;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.value.Outcome;

/** Rules about eyes that see a moving hand or a light, and no shapes. */
final class LittleSightRules {

  private LittleSightRules() {}

  static List<ConsistencyRule> all() {
    return List.of(handButPlates(), handButPrint(), handButFingersCounted());
  }

  private static ConsistencyRule handButPlates() {
    return implausible("hand-movements-but-plates", Severity.WARNING)
        .what("An eye that sees no more than a moving hand or a light reads colour plates.")
        .why("The figures of the plates need about 6/60.")
        .on(Colours.PLATES, Acuities.DISTANCE)
        .wanted("no plate read, or a better acuity")
        .suggest("check which eye was meant, and whether the acuity was taken with correction")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Colours.PLATES,
                    plates -> plates.correct() > 1,
                    Acuities.DISTANCE,
                    Sight::isHandOrLight));
  }

  private static ConsistencyRule handButPrint() {
    return implausible("hand-movements-but-print", Severity.WARNING)
        .what("An eye that sees no more than a moving hand or a light reads print.")
        .why("Print needs shapes; a very short-sighted eye reads, but then it counts fingers.")
        .on(Acuities.NEAR, Acuities.DISTANCE)
        .wanted("near acuity absent, or a better acuity at distance")
        .settledByRemark()
        .suggest("check which eye was meant, and note a strong refraction in the remarks")
        .eachEye(
            eye ->
                Breach.clash(
                    eye, Acuities.NEAR, any -> true, Acuities.DISTANCE, Sight::isHandOrLight));
  }

  private static ConsistencyRule handButFingersCounted() {
    return contradictory("hand-movements-but-fingers-counted", Severity.WARNING)
        .what("An eye that sees no more than a moving hand or a light counts fingers in its field.")
        .why("An eye that counts fingers is recorded as counting fingers.")
        .on(Fields.CONFRONTATION, Acuities.DISTANCE)
        .wanted("another target, such as hand or light, or an acuity of counting fingers")
        .suggest("state what was shown in the field")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Fields.CONFRONTATION,
                    LittleSightRules::isCounted,
                    Acuities.DISTANCE,
                    Sight::isHandOrLight));
  }

  private static boolean isCounted(Fields.Confrontation field) {
    return field.target().filter(FieldTarget.FINGER_COUNTING::equals).isPresent()
        && field.regions().containsValue(Outcome.found(FieldResponse.FULL));
  }
}
