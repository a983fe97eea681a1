package org.isopter.model.note.token;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * An acuity that is written again in another notation, in brackets behind it: {@code 6/6 (0.0)},
 * {@code 20/40 (6/12)}. It is passed over only where it says the same; else it is left, and refused
 * as a second acuity.
 */
public final class SameAcuity {

  /** How much a rounded figure may differ: 6/9 is 0.176 logMAR, and written 0.2. */
  private static final double ROUNDING = 0.03;

  private SameAcuity() {}

  /** Moves past brackets that hold the same acuity as a logMAR, a decimal or another fraction. */
  public static Optional<Boolean> inBrackets(Cursor cursor, BigDecimal distance, BigDecimal size) {
    if (size.signum() == 0 || distance.signum() == 0 || !cursor.take("(")) {
      return Optional.empty();
    }
    double decimal = distance.doubleValue() / size.doubleValue();
    Optional<BigDecimal> number = cursor.anyNumber();
    boolean same =
        cursor.take("/")
            ? isNear(number, cursor.number(), decimal)
            : isSame(cursor, number, decimal);
    return Optional.of(true).filter(any -> same && cursor.take(")"));
  }

  private static boolean isNear(
      Optional<BigDecimal> distance, Optional<BigDecimal> size, double decimal) {
    return distance.isPresent()
        && size.filter(of -> of.signum() > 0).isPresent()
        && Math.abs(distance.get().doubleValue() / size.get().doubleValue() - decimal) < ROUNDING;
  }

  private static boolean isSame(Cursor cursor, Optional<BigDecimal> number, double decimal) {
    boolean onlyLog = cursor.take("logmar");
    boolean onlyDecimal = !onlyLog && cursor.take("decimal");
    double logMar = -Math.log10(decimal);
    return number
        .map(BigDecimal::doubleValue)
        .filter(
            seen ->
                (!onlyDecimal && Math.abs(seen - logMar) < ROUNDING)
                    || (!onlyLog && Math.abs(seen - decimal) < ROUNDING))
        .isPresent();
  }
}
