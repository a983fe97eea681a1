package org.isopter.mapper.foreign.ledger;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.fhir.element.NumberLimit;
import org.isopter.mapper.json.RawJson;

/** Reads numbers from the text they were written in, keeping their decimals. */
public final class Digits {

  private static final Pattern PLAIN = Pattern.compile("[+-]?\\d{1,9}(\\.\\d{1,9})?");

  private Digits() {}

  /**
   * Returns the number of a quantity.
   *
   * @throws Refusal when it has more digits than a record keeps
   */
  public static BigDecimal value(Place quantity) throws Refusal {
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
  public static Optional<BigDecimal> plain(String text) {
    String digits = text.strip();
    if (!PLAIN.matcher(digits).matches()) {
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(digits.startsWith("+") ? digits.substring(1) : digits));
  }

  /** Returns the digits without an exponent. */
  public static String text(BigDecimal number) {
    return number.toPlainString();
  }

  private static BigDecimal number(String text, Place at) throws Refusal {
    if (text.length() <= NumberLimit.DIGITS) {
      BigDecimal number = new BigDecimal(text);
      if (NumberLimit.holds(number)) {
        return number;
      }
    }
    String seen = text.substring(0, Math.min(NumberLimit.DIGITS, text.length()));
    throw Refusal.of(Why.VALUE_UNFIT, at.at(), seen, "a number of fewer digits");
  }
}
