package org.isopter.model.clinical.lens;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Prism dioptres and degrees: {@code 100 tan(angle)}, by definition. The scale is not linear, and
 * has no end at 90 degrees.
 */
public final class PrismAngle {

  private static final int RIGHT_ANGLE = 90;

  private PrismAngle() {}

  /** Returns the degrees of a deviation in prism dioptres, to 0.01; the sign is kept. */
  public static BigDecimal degrees(BigDecimal prismDioptres) {
    return Numbers.round(Math.toDegrees(Math.atan(prismDioptres.doubleValue() / 100)), 2);
  }

  /** Returns the prism dioptres of degrees, to 0.1, or a refusal from 90 degrees on. */
  public static Result<BigDecimal> prismDioptres(BigDecimal degrees) {
    return degrees.abs().compareTo(BigDecimal.valueOf(RIGHT_ANGLE)) >= 0
        ? Result.refused(Fault.of("", degrees + " deg", "less than 90 deg"))
        : Result.ok(Numbers.round(100 * Math.tan(Math.toRadians(degrees.doubleValue())), 1));
  }
}
