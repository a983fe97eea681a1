package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Numbers;

/**
 * The angle under which a size is seen, square to the line of sight. Source: plane trigonometry.
 */
public final class VisualAngle {

  private static final double MINUTES = 60;

  private VisualAngle() {}

  /**
   * Returns the angle in minutes of arc, to 0.1.
   *
   * @param sizeMm the size in millimetres
   * @param distanceMm the distance in millimetres, above zero
   * @throws IllegalArgumentException when the distance is not above zero
   */
  public static BigDecimal minutes(double sizeMm, double distanceMm) {
    if (distanceMm <= 0) {
      throw new IllegalArgumentException("a distance of " + distanceMm + " mm");
    }
    return Numbers.round(Math.toDegrees(Math.atan(sizeMm / distanceMm)) * MINUTES, 1);
  }

  /**
   * Returns the size in millimetres that is seen under an angle, to 0.01.
   *
   * @param minutes the angle in minutes of arc
   * @param distanceMm the distance in millimetres
   */
  public static BigDecimal sizeMm(double minutes, double distanceMm) {
    return Numbers.round(distanceMm * Math.tan(Math.toRadians(minutes / MINUTES)), 2);
  }
}
