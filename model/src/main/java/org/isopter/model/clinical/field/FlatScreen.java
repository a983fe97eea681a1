package org.isopter.model.clinical.field;

import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * A flat screen square to the line of sight. A direction is an azimuth (temporal is positive) and
 * an elevation (up is positive) in degrees; a point is x and y in millimetres from fixation: {@code
 * x = D tan(azimuth)}, {@code y = D tan(elevation) / cos(azimuth)}. Source: plane trigonometry.
 *
 * @param distanceMm the distance D of the screen in mm
 */
public record FlatScreen(double distanceMm) {

  /** A direction from the eye, in degrees. */
  public record Direction(double azimuth, double elevation) {}

  /** A point on the screen, in mm from fixation. */
  public record Point(double x, double y) {}

  /** Returns a screen, or a refusal for a distance that is not above zero. */
  public static Result<FlatScreen> at(double distanceMm) {
    return distanceMm > 0
        ? Result.ok(new FlatScreen(distanceMm))
        : Result.refused(Fault.of("screen-distance", distanceMm + " mm", "a distance above 0"));
  }

  /** Returns the point at which a direction, within 90 degrees of fixation, meets the screen. */
  public Point meet(Direction direction) {
    double azimuth = Math.toRadians(direction.azimuth());
    double elevation = Math.toRadians(direction.elevation());
    return new Point(
        distanceMm * Math.tan(azimuth), distanceMm * Math.tan(elevation) / Math.cos(azimuth));
  }

  /** Returns the direction in which a point is seen. */
  public Direction direction(Point point) {
    double azimuth = Math.atan(point.x() / distanceMm);
    double elevation = Math.atan(point.y() * Math.cos(azimuth) / distanceMm);
    return new Direction(Math.toDegrees(azimuth), Math.toDegrees(elevation));
  }
}
