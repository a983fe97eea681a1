package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.util.Optional;

/** Reads plain decimal digits; an exponent could hide a number of any size. */
final class PlainNumber {

  /** The same form as a regular expression, for the schema. */
  static final String PATTERN = "[+-]?\\d+(?:\\.\\d+)?";

  private static final int LONGEST = 24;
  private static final int LONGEST_WHOLE = 9;

  private PlainNumber() {}

  /** Returns the number with the scale that was written, or nothing. */
  static Optional<BigDecimal> of(String text) {
    int start = isSigned(text) ? 1 : 0;
    int point = text.indexOf('.');
    boolean plain =
        text.length() <= LONGEST
            && (point < 0
                ? isDigits(text, start, text.length())
                : isDigits(text, start, point) && isDigits(text, point + 1, text.length()));
    return plain ? Optional.of(new BigDecimal(text)) : Optional.empty();
  }

  /** Returns the whole number, or nothing. */
  static Optional<Integer> whole(String text) {
    int start = text.startsWith("-") ? 1 : 0;
    return text.length() - start <= LONGEST_WHOLE && isDigits(text, start, text.length())
        ? Optional.of(Integer.parseInt(text))
        : Optional.empty();
  }

  private static boolean isSigned(String text) {
    return text.startsWith("-") || text.startsWith("+");
  }

  private static boolean isDigits(String text, int from, int to) {
    for (int i = from; i < to; i++) {
      if (text.charAt(i) < '0' || text.charAt(i) > '9') {
        return false;
      }
    }
    return from < to;
  }
}
