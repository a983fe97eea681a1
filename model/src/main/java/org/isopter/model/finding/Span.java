package org.isopter.model.finding;

import java.math.BigDecimal;
import org.isopter.model.value.Unit;

/**
 * The numbers that may be recorded in a unit, both ends included.
 *
 * @param unit the unit
 * @param least the least number
 * @param most the greatest number
 */
public record Span(Unit unit, BigDecimal least, BigDecimal most) {

  /** Returns the span between two numbers given by their digits. */
  public static Span of(Unit unit, String least, String most) {
    return new Span(unit, new BigDecimal(least), new BigDecimal(most));
  }

  /** Says whether the number lies in the span. */
  public boolean holds(BigDecimal value) {
    return value.compareTo(least) >= 0 && value.compareTo(most) <= 0;
  }

  /** Returns the span for a message, for instance {@code 0 to 80 mmHg}. */
  @Override
  public String toString() {
    String range = least.toPlainString() + " to " + most.toPlainString();
    return unit.text().isEmpty() ? range : range + " " + unit.text();
  }
}
