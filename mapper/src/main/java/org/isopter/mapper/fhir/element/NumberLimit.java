package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;

/**
 * Which numbers are looked at: with an exponent, a few characters can stand for a billion digits.
 */
public final class NumberLimit {

  /** Far more digits than any finding has. */
  public static final int DIGITS = 20;

  private NumberLimit() {}

  /** Says whether a number can be written out without exponent in a few digits. */
  public static boolean holds(BigDecimal number) {
    return Math.abs((long) number.scale()) <= DIGITS;
  }
}
