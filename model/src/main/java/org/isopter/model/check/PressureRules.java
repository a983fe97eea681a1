package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** Rules about the pressure in the eye. */
final class PressureRules {

  private static final BigDecimal LOW = BigDecimal.valueOf(5);
  private static final BigDecimal HIGH = BigDecimal.valueOf(50);
  private static final BigDecimal APART = BigDecimal.TEN;

  private PressureRules() {}

  static List<ConsistencyRule> all() {
    return List.of(methodMissing(), byFinger(), veryLow(), veryHigh(), farApart());
  }

  private static ConsistencyRule methodMissing() {
    return incomplete("pressure-method-missing", Severity.WARNING)
        .what("A pressure is stated without how it was measured.")
        .why("Methods differ by several mmHg, so that a change may be one of method.")
        .on(Pressures.INTRAOCULAR)
        .wanted("method, for instance goldmann or rebound")
        .suggest("add the method; other is there for those without a word")
        .eachEye(
            eye ->
                eye.seen(Pressures.INTRAOCULAR)
                    .filter(seen -> seen.fact().method().isEmpty())
                    .map(Breach::of));
  }

  private static ConsistencyRule byFinger() {
    return contradictory("pressure-number-by-finger", Severity.WARNING)
        .what("A pressure in mmHg is stated as felt with the finger.")
        .why("The finger tells hard from soft and no number.")
        .on(Pressures.INTRAOCULAR)
        .wanted("another method, or no number")
        .suggest("correct the method, or put what was felt into the remarks of an absent pressure")
        .eachEye(
            eye ->
                eye.seen(Pressures.INTRAOCULAR)
                    .filter(seen -> seen.fact().method().equals(Optional.of(Tonometry.PALPATION)))
                    .map(seen -> Breach.of(seen).in("method")));
  }

  private static ConsistencyRule veryLow() {
    return implausible("pressure-very-low", Severity.WARNING)
        .what("A pressure is below 5 mmHg.")
        .why("So low a pressure is rare and mostly a failed reading.")
        .on(Pressures.INTRAOCULAR)
        .wanted("at least 5 mmHg, or a confirmed reading")
        .settledByRemark()
        .suggest("repeat it and say so in the remarks")
        .eachEye(eye -> eye.seen(Pressures.INTRAOCULAR, PressureRules::isLow).map(Breach::of));
  }

  private static boolean isLow(Quantity pressure) {
    return pressure.value().compareTo(LOW) < 0;
  }

  private static ConsistencyRule veryHigh() {
    return implausible("pressure-very-high", Severity.WARNING)
        .what("A pressure is above 50 mmHg.")
        .why("It occurs in acute glaucoma; it is as often a squeezed lid or a slip of a digit.")
        .on(Pressures.INTRAOCULAR)
        .wanted("at most 50 mmHg, or a confirmed reading")
        .settledByRemark()
        .suggest("repeat it and say so in the remarks")
        .eachEye(eye -> eye.seen(Pressures.INTRAOCULAR, PressureRules::isHigh).map(Breach::of));
  }

  private static boolean isHigh(Quantity pressure) {
    return pressure.value().compareTo(HIGH) > 0;
  }

  private static ConsistencyRule farApart() {
    return implausible("pressures-far-apart", Severity.INFORMATION)
        .what("The pressures of the two eyes differ by more than 10 mmHg.")
        .why("The eyes of most people lie within a few mmHg.")
        .on(Pressures.INTRAOCULAR)
        .wanted("pressures at most 10 mmHg apart, or a confirmed reading")
        .settledByRemark()
        .suggest("repeat both with one method")
        .pair(
            both ->
                both.at(Site.RIGHT)
                    .seen(Pressures.INTRAOCULAR)
                    .flatMap(
                        right ->
                            both
                                .at(Site.LEFT)
                                .beside(
                                    right,
                                    Pressures.INTRAOCULAR,
                                    left -> isFarApart(right.value(), left))
                                .map(left -> Breach.of(right, left))
                                .stream())
                    .limit(1));
  }

  private static boolean isFarApart(Quantity one, Quantity other) {
    return one.value().subtract(other.value()).abs().compareTo(APART) > 0;
  }
}
