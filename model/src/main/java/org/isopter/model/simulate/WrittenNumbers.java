package org.isopter.model.simulate;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.isopter.model.finding.Datum;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** WrittenNumbers with the digits that people write. */
final class WrittenNumbers {

  private WrittenNumbers() {}

  static BigDecimal digits(double value, int scale) {
    return BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_EVEN);
  }

  /** Returns a value on the nearest step, with so many decimals. */
  static BigDecimal stepped(double value, double step, int scale) {
    return digits(Math.rint(value / step) * step, scale);
  }

  static Quantity quantity(double value, double step, int scale, Unit unit) {
    return new Quantity(stepped(value, step, scale), unit);
  }

  static Datum.Ratio outOf(int part, int whole) {
    return new Datum.Ratio(BigDecimal.valueOf(part), BigDecimal.valueOf(whole), Unit.ONE);
  }
}
