package org.isopter.mapper.foreign;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads numbers from the text they were written in, keeping their decimals. */
final class Digits {

  private static final Pattern PLAIN = Pattern.compile("[+-]?\\d{1,9}(\\.\\d{1,9})?");

  /** Far more digits than any finding has; an exponent of a billion must not fill the memory. */
  private static final int MOST = 20;

  private Digits() {}

  /** Returns the number of a quantity. */
  static BigDecimal value(Place quantity) throws Refusal {
    Optional<String> text = quantity.number("value");
    if (text.isEmpty()) {
      throw Refusal.of(Why.VALUE_UNFIT, quantity.at(), RawJson.write(quantity.value()), "a number");
    }
    if (quantity.has("comparator")) {
      throw Refusal.of(
          Why.VALUE_UNFIT,
          quantity.at() + "/comparator",
          "\"" + quantity.text("comparator") + "\"",
          "a number, not a bound of one");
    }
    return number(text.get(), quantity);
  }

  /** Returns a number that is written plainly in a text. */
  static Optional<BigDecimal> plain(String text) {
    String digits = text.strip();
    if (!PLAIN.matcher(digits).matches()) {
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(digits.startsWith("+") ? digits.substring(1) : digits));
  }

  /** Returns the digits without an exponent. */
  static String text(BigDecimal number) {
    return number.toPlainString();
  }

  static BigDecimal number(String text, Place at) throws Refusal {
    BigDecimal number = text.length() <= MOST ? parse(text) : BigDecimal.valueOf(Long.MAX_VALUE);
    if (number.precision() > MOST || Math.abs((long) number.scale()) > MOST) {
      throw Refusal.of(
          Why.VALUE_UNFIT,
          at.at(),
          text.substring(0, Math.min(MOST, text.length())),
          "a number of fewer digits");
    }
    return number;
  }

  private static BigDecimal parse(String text) {
    return new BigDecimal(text);
  }
}
