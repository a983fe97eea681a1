package org.isopter.model.entry;

import java.math.BigInteger;
import java.util.Random;

/**
 * Makes identifiers that sort by the time at which they were made: 48 bits of milliseconds and 80
 * of chance, in 26 characters of Crockford's base 32.
 */
public final class Ulid {

  private static final String DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int LENGTH = 26;
  private static final int RANDOM_BITS = 80;

  private Ulid() {}

  /**
   * Returns an identifier.
   *
   * @param millis the time in milliseconds since 1970
   * @param random what the rest comes from
   */
  public static String of(long millis, Random random) {
    BigInteger number =
        BigInteger.valueOf(millis).shiftLeft(RANDOM_BITS).or(new BigInteger(RANDOM_BITS, random));
    StringBuilder text = new StringBuilder();
    for (int i = LENGTH - 1; i >= 0; i--) {
      text.append(DIGITS.charAt(number.shiftRight(i * 5).intValue() & 31));
    }
    return text.toString();
  }
}
