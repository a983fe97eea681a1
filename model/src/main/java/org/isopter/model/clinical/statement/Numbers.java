package org.isopter.model.clinical.statement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * Rounding (half away from zero, always), and lengths in one unit. Source of the foot and inch: the
 * definition, 0.3048 m and 0.0254 m.
 */
public final class Numbers {

  private static final Map<Unit, BigDecimal> METRES =
      Map.of(
          Unit.METRE, BigDecimal.ONE,
          Unit.CENTIMETRE, new BigDecimal("0.01"),
          Unit.MILLIMETRE, new BigDecimal("0.001"),
          Unit.FOOT, new BigDecimal("0.3048"),
          Unit.INCH, new BigDecimal("0.0254"));

  private Numbers() {}

  /** Returns a number with so many decimals, halves away from zero. */
  public static BigDecimal round(double value, int places) {
    return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
  }

  /** Returns a number with so many decimals, halves away from zero. */
  public static BigDecimal round(BigDecimal value, int places) {
    return value.setScale(places, RoundingMode.HALF_UP);
  }

  /** Returns the nearest whole number. */
  public static int whole(double value) {
    return round(value, 0).intValueExact();
  }

  /** Returns a length in metres, or nothing where the unit is no unit of length. */
  public static Optional<BigDecimal> metres(Quantity length) {
    return Optional.ofNullable(METRES.get(length.unit())).map(length.value()::multiply);
  }

  /** Says whether a length is so many metres. */
  public static boolean isMetres(Quantity length, String metres) {
    BigDecimal wanted = new BigDecimal(metres);
    return metres(length).filter(far -> far.compareTo(wanted) == 0).isPresent();
  }
}
