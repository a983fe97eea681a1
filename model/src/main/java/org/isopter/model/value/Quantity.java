package org.isopter.model.value;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A number with its unit; the number's scale is part of the value (1.50 is not 1.5).
 *
 * @param value the number as it was written
 * @param unit the unit it was written in
 */
public record Quantity(BigDecimal value, Unit unit) {

  public Quantity {
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(unit, "unit");
  }

  /**
   * Returns a quantity from the digits as written.
   *
   * @throws NumberFormatException when the digits are no decimal number
   */
  public static Quantity of(String digits, Unit unit) {
    return new Quantity(new BigDecimal(Objects.requireNonNull(digits, "digits")), unit);
  }

  /** Returns the number and the unit's text, for instance {@code 14 mmHg}. */
  @Override
  public String toString() {
    String digits = value.toPlainString();
    return unit.text().isEmpty() ? digits : digits + " " + unit.text();
  }
}
