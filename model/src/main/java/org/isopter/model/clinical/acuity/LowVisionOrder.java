package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;

/**
 * The order of low vision: counting fingers, hand movements, light perception, none; and against
 * lines of a chart, as far as that is safe.
 */
final class LowVisionOrder {

  /** The largest line of a usual chart, 6/60: who reads it does not count fingers. */
  private static final double LARGEST_LINE = 1.0;

  /** 1/60, which WHO prints beside counting fingers at 1 m. */
  private static final double AT_ONE_METRE = Math.log10(60);

  private LowVisionOrder() {}

  /** Returns how the first stands to the second, of which at least one is low vision. */
  static Optional<AcuityOrder> order(Acuity first, Acuity second) {
    if (first instanceof Acuity.Low one && second instanceof Acuity.Low two) {
      return ofLow(one, two);
    }
    return first instanceof Acuity.Low low
        ? chartAgainst(second, low).map(AcuityOrder::reversed)
        : chartAgainst(first, (Acuity.Low) second);
  }

  private static Optional<AcuityOrder> chartAgainst(Acuity chart, Acuity.Low low) {
    OptionalDouble logMar = AcuityScale.logMar(chart);
    double limit = low.category() == LowVision.COUNTING_FINGERS ? fingers(low) : AT_ONE_METRE;
    boolean better = logMar.isPresent() && logMar.getAsDouble() < limit;
    return better ? Optional.of(AcuityOrder.BETTER) : Optional.empty();
  }

  private static double fingers(Acuity.Low low) {
    boolean close = metres(low).filter(metres -> metres.compareTo(BigDecimal.ONE) <= 0).isPresent();
    return close ? AT_ONE_METRE : LARGEST_LINE + AcuityScale.LINE_TOLERANCE;
  }

  private static Optional<AcuityOrder> ofLow(Acuity.Low one, Acuity.Low two) {
    int step = Integer.compare(rank(one.category()), rank(two.category()));
    if (step != 0) {
      return Optional.of(step < 0 ? AcuityOrder.BETTER : AcuityOrder.WORSE);
    }
    if (one.equals(two) && one.category() != LowVision.COUNTING_FINGERS) {
      return Optional.of(AcuityOrder.EQUAL);
    }
    return one.category() == LowVision.COUNTING_FINGERS ? byDistance(one, two) : Optional.empty();
  }

  private static Optional<AcuityOrder> byDistance(Acuity.Low one, Acuity.Low two) {
    return metres(one)
        .flatMap(far -> metres(two).map(far::compareTo))
        .map(
            step ->
                step > 0 ? AcuityOrder.BETTER : step < 0 ? AcuityOrder.WORSE : AcuityOrder.EQUAL);
  }

  private static Optional<BigDecimal> metres(Acuity.Low low) {
    return low.distance().flatMap(Numbers::metres);
  }

  private static int rank(LowVision category) {
    return switch (category) {
      case COUNTING_FINGERS -> 0;
      case HAND_MOVEMENTS -> 1;
      case LIGHT_PERCEPTION, LIGHT_PERCEPTION_ACCURATE, LIGHT_PERCEPTION_INACCURATE -> 2;
      case NO_LIGHT_PERCEPTION -> 3;
    };
  }
}
