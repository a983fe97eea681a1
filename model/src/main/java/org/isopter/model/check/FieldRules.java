package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Fields.BlindSpot;
import org.isopter.model.catalogue.Fields.Edge;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Rules about the field, by confrontation and with moving targets, and the blind spot. */
final class FieldRules {

  private static final String SPOT =
      "Wandell 1995: 12 to 15 deg temporal, 1.5 below, 5.5 wide, 7.5 high";

  /** Each target after the first is smaller, or as large and dimmer. */
  private static final List<String> STRONGEST_FIRST =
      List.of("v4e", "iv4e", "iii4e", "ii4e", "i4e", "i3e", "i2e", "i1e");

  private static final BigDecimal FAR_OUT = BigDecimal.valueOf(30);

  private FieldRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        centreLostButSharp(),
        sidesExchanged(),
        heightsExchanged(),
        spotOnNasalSide(),
        spotAroundFixation(),
        spotFarOut(),
        handButFingersCounted(),
        isoptersCross());
  }

  private static ConsistencyRule centreLostButSharp() {
    return implausible("centre-lost-but-sharp", Severity.WARNING)
        .what(
            "The centre of the field sees nothing of the target, and the acuity is 6/6 or better.")
        .why("6/6 is read with the centre; red may fail there while letters are still read.")
        .on(Fields.CONFRONTATION, Acuities.DISTANCE)
        .wanted("a centre that is full or reduced, or a lower acuity")
        .settledByRemark()
        .suggest("test the centre again with one eye covered")
        .eachEye(
            eye ->
                Breach.clash(
                        eye,
                        Fields.CONFRONTATION,
                        FieldRules::isCentreLost,
                        Acuities.DISTANCE,
                        Sight::isSixSix)
                    .map(breach -> breach.in("central")));
  }

  private static boolean isCentreLost(Fields.Confrontation field) {
    return Outcome.found(FieldResponse.ABSENT).equals(field.regions().get(FieldRegion.CENTRAL))
        && field.target().filter(FieldTarget.RED_TARGET::equals).isEmpty();
  }

  private static ConsistencyRule sidesExchanged() {
    return impossible("blind-spot-sides-exchanged")
        .what("The nasal edge of the blind spot lies as far out as the temporal edge, or farther.")
        .why("The nasal edge is the one nearer to fixation.")
        .source(SPOT)
        .on(Fields.BLIND_SPOT)
        .wanted("a nasal edge below the temporal edge")
        .suggest("exchange the two, or check the signs")
        .eachEye(
            eye -> spots(eye, Edge.NASAL, Edge.TEMPORAL, (near, far) -> order(near, far) >= 0));
  }

  private static ConsistencyRule heightsExchanged() {
    return impossible("blind-spot-heights-exchanged")
        .what("The upper edge of the blind spot lies as low as the lower edge, or lower.")
        .why("Heights are measured upward from fixation; below it they are negative.")
        .source(SPOT)
        .on(Fields.BLIND_SPOT)
        .wanted("an upper edge above the lower edge")
        .suggest("exchange the two, or write the lower edge as negative where it lies below")
        .eachEye(eye -> spots(eye, Edge.LOWER, Edge.UPPER, (low, high) -> order(low, high) >= 0));
  }

  private static ConsistencyRule spotOnNasalSide() {
    return impossible("blind-spot-on-nasal-side")
        .what("The whole blind spot lies on the nasal side of fixation.")
        .why("The disc lies nasal to the fovea, so that its blind spot is temporal.")
        .source(SPOT)
        .on(Fields.BLIND_SPOT)
        .wanted("edges outward from fixation, temporal being positive in either eye")
        .suggest("remove the minus signs if they only stand for left; check the eye otherwise")
        .eachEye(
            eye ->
                spots(
                    eye,
                    Edge.NASAL,
                    Edge.TEMPORAL,
                    (near, far) -> order(near, far) < 0 && far.value().signum() <= 0));
  }

  private static ConsistencyRule spotAroundFixation() {
    return implausible("blind-spot-around-fixation", Severity.INFORMATION)
        .what("The blind spot reaches fixation or passes it.")
        .why("It is a scotoma that joins the blind spot to the centre, or a slip of sign.")
        .source(SPOT)
        .on(Fields.BLIND_SPOT)
        .wanted("a nasal edge above 0, or a remark")
        .settledByRemark()
        .suggest("confirm it in the remarks")
        .eachEye(
            eye ->
                spots(
                    eye,
                    Edge.NASAL,
                    Edge.TEMPORAL,
                    (near, far) -> near.value().signum() <= 0 && far.value().signum() > 0));
  }

  private static ConsistencyRule spotFarOut() {
    return implausible("blind-spot-far-out", Severity.WARNING)
        .what("The temporal edge of the blind spot lies more than 30 degrees out.")
        .why("The blind spot ends near 18 degrees; even a much enlarged one seldom passes 30.")
        .source(SPOT + "; the limit of 30: common practice, no source")
        .on(Fields.BLIND_SPOT)
        .wanted("a temporal edge of at most 30 deg")
        .settledByRemark()
        .suggest("check the distance of the screen and the unit")
        .eachEye(
            eye ->
                eye.seen(Fields.BLIND_SPOT, FieldRules::isFarOut)
                    .map(spot -> Breach.of(spot).in("temporal-edge")));
  }

  private static boolean isFarOut(BlindSpot spot) {
    return edge(spot, Edge.TEMPORAL)
        .filter(edge -> edge.unit().equals(Unit.DEGREE) && edge.value().compareTo(FAR_OUT) > 0)
        .isPresent();
  }

  private static Stream<Breach> spots(
      EyeView eye, Edge one, Edge other, BiPredicate<Quantity, Quantity> which) {
    return eye.seen(Fields.BLIND_SPOT, spot -> isSuch(spot, one, other, which)).map(Breach::of);
  }

  private static boolean isSuch(
      BlindSpot spot, Edge one, Edge other, BiPredicate<Quantity, Quantity> which) {
    return edge(spot, one)
        .flatMap(
            first ->
                edge(spot, other)
                    .filter(last -> first.unit().equals(last.unit()) && which.test(first, last)))
        .isPresent();
  }

  private static Optional<Quantity> edge(BlindSpot spot, Edge edge) {
    return Optional.ofNullable(spot.edges().get(edge));
  }

  private static int order(Quantity one, Quantity other) {
    return one.value().compareTo(other.value());
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
                    FieldRules::isCounted,
                    Acuities.DISTANCE,
                    Sight::isHandOrLight));
  }

  private static boolean isCounted(Fields.Confrontation field) {
    return field.target().filter(FieldTarget.FINGER_COUNTING::equals).isPresent()
        && field.regions().containsValue(Outcome.found(FieldResponse.FULL));
  }

  private static ConsistencyRule isoptersCross() {
    return contradictory("isopters-cross", Severity.WARNING)
        .what("A weaker moving target is seen 10 degrees farther out than a stronger one.")
        .why("What sees the weaker target sees the stronger one too: isopters lie in each other.")
        .on(FieldFeatures.ISOPTER)
        .wanted("the isopter of the weaker target inside that of the stronger")
        .settledByRemark()
        .suggest("check the targets and the eye; test that direction again")
        .eachEye(
            eye ->
                eye.seen(FieldFeatures.ISOPTER)
                    .flatMap(
                        weak ->
                            eye
                                .beside(
                                    weak,
                                    FieldFeatures.ISOPTER,
                                    strong -> isOutside(weak.value(), strong))
                                .map(strong -> Breach.of(weak, strong))
                                .stream()));
  }

  private static boolean isOutside(FieldFeatures.Isopter weak, FieldFeatures.Isopter strong) {
    return isWeaker(weak.stimulus().word(), strong.stimulus().word())
        && weak.extents().entrySet().stream()
            .anyMatch(
                far ->
                    Optional.ofNullable(strong.extents().get(far.getKey()))
                        .filter(near -> isTenFarther(far.getValue(), near))
                        .isPresent());
  }

  private static boolean isTenFarther(Quantity far, Quantity near) {
    return far.value().subtract(near.value()).compareTo(BigDecimal.TEN) >= 0;
  }

  private static boolean isWeaker(String one, String other) {
    int strong = STRONGEST_FIRST.indexOf(other);
    return strong >= 0 && STRONGEST_FIRST.indexOf(one) > strong;
  }
}
