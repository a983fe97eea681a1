package org.isopter.model.clinical.lens;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Numbers;

/**
 * A lens as a power vector: {@code M = S + C/2}, {@code J0 = -(C/2) cos 2a}, {@code J45 = -(C/2)
 * sin 2a}. Source: Thibos 1997, Optom Vis Sci 74:367 (formulas from memory). Not rounded.
 *
 * @param m the spherical equivalent in dioptres
 * @param j0 the cross-cylinder at 180 and 90 degrees, in dioptres
 * @param j45 the cross-cylinder at 45 and 135 degrees, in dioptres
 */
public record PowerVector(double m, double j0, double j45) {

  /** Returns the power vector of a lens. */
  public static PowerVector of(Lens lens) {
    double half = lens.cylinder().doubleValue() / 2;
    double twice = Math.toRadians(2.0 * lens.axis());
    return new PowerVector(
        lens.sphericalEquivalent().doubleValue(), -half * Math.cos(twice), -half * Math.sin(twice));
  }

  /** Returns the length of the vector, the overall blur strength, in dioptres. */
  public double blur() {
    return Math.sqrt(m * m + j0 * j0 + j45 * j45);
  }

  /** Returns this vector less another; its length is how far apart two lenses are. */
  public PowerVector minus(PowerVector other) {
    return new PowerVector(m - other.m, j0 - other.j0, j45 - other.j45);
  }

  /** Says whether no component differs by more than a tolerance in dioptres. */
  public boolean equalsWithin(PowerVector other, double tolerance) {
    PowerVector apart = minus(other);
    return Math.abs(apart.m) <= tolerance
        && Math.abs(apart.j0) <= tolerance
        && Math.abs(apart.j45) <= tolerance;
  }

  /**
   * Returns the lens, in minus cylinder; powers to 0.01 dioptre, the axis to a whole degree.
   *
   * <p>A cylinder that rounds to nothing is left out.
   */
  public Lens toLens() {
    double half = Math.hypot(j0, j45);
    BigDecimal cylinder = Numbers.round(-2 * half, 2);
    int degrees = Numbers.whole(Math.toDegrees(Math.atan2(j45, j0)) / 2);
    return Lens.of(Numbers.round(m + half, 2), cylinder, Math.floorMod(degrees, 180)).orThrow();
  }
}
