package org.isopter.model.clinical.lens;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.catalogue.Refractions.Refraction;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * A spherocylindrical lens. Without a cylinder there is no axis; an axis of 0 is 180. Source of
 * transposition and of the spherical equivalent: the arithmetic of thin lenses.
 *
 * @param sphere the sphere in dioptres
 * @param cylinder the cylinder in dioptres, of either sign
 * @param axis the axis in whole degrees, 1 to 180; 0 exactly when there is no cylinder
 */
public record Lens(BigDecimal sphere, BigDecimal cylinder, int axis) {

  private static final int HALF_TURN = 180;
  private static final int RIGHT_ANGLE = 90;

  /** Returns a lens without a cylinder. */
  public static Lens sphere(BigDecimal power) {
    return new Lens(power, BigDecimal.ZERO, 0);
  }

  /**
   * Returns a lens, or a refusal for a cylinder whose axis is outside 0 to 180; 0 is read as 180,
   * and the axis of no cylinder is dropped.
   */
  public static Result<Lens> of(BigDecimal sphere, BigDecimal cylinder, int axis) {
    if (cylinder.signum() == 0) {
      return Result.ok(sphere(sphere));
    }
    return axis < 0 || axis > HALF_TURN
        ? Result.refused(Fault.of("axis", axis + " deg", "1 to 180 deg"))
        : Result.ok(new Lens(sphere, cylinder, axis == 0 ? HALF_TURN : axis));
  }

  /** Returns the lens of a recorded refraction; addition and prism are left out. */
  public static Result<Lens> of(Refraction refraction) {
    BigDecimal power = refraction.sphere().value();
    return refraction
        .cylinder()
        .map(cyl -> of(power, cyl.power().value(), cyl.axis().value().intValue()))
        .orElseGet(() -> Result.ok(sphere(power)));
  }

  /** Returns the axis in degrees; empty when there is no cylinder. */
  public Optional<Integer> cylinderAxis() {
    return axis == 0 ? Optional.empty() : Optional.of(axis);
  }

  /** Returns the same lens written with the other sign of cylinder; a sphere stays as it is. */
  public Lens transposed() {
    return axis == 0
        ? this
        : new Lens(
            sphere.add(cylinder),
            cylinder.negate(),
            axis > RIGHT_ANGLE ? axis - RIGHT_ANGLE : axis + RIGHT_ANGLE);
  }

  /** Returns the same lens written with a cylinder that is not positive. */
  public Lens inMinusCylinder() {
    return cylinder.signum() > 0 ? transposed() : this;
  }

  /** Returns the spherical equivalent in dioptres: sphere and half the cylinder, exact. */
  public BigDecimal sphericalEquivalent() {
    return sphere.add(cylinder.multiply(new BigDecimal("0.5")));
  }

  /** Says whether both are the same lens, however written: their power vectors are equal. */
  public boolean isSameAs(Lens other) {
    return PowerVector.of(this).equalsWithin(PowerVector.of(other), 1e-9);
  }

  /** Returns the lens in the trade's notation, for instance {@code -2.00 -1.50 x30}. */
  @Override
  public String toString() {
    String spherical = signed(sphere);
    return axis == 0 ? spherical + " DS" : spherical + " " + signed(cylinder) + " x" + axis;
  }

  private static String signed(BigDecimal power) {
    return (power.signum() < 0 ? "" : "+") + Numbers.round(power, 2).toPlainString();
  }
}
