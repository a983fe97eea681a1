package org.isopter.mapper.hapi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * Refuses numbers that would keep HAPI's models busy for minutes: they write a number out, zero by
 * zero, and read it again, in a time that grows with the square of its digits.
 */
final class DigitBudget {

  /** Numbers of fewer digits cost nothing to speak of. */
  private static final int FEW = 1_000;

  /** The sum of the squares of the digits in a document; some seconds. */
  private static final double BUDGET = 1e11;

  /** A number that stands alone: in an identifier such as 1e234567-89ab-... it costs nothing. */
  private static final Pattern NUMBER =
      Pattern.compile("(?<=[\"':\\[,\\s]-?)(\\d[\\d.]*+)(?:[eE][+-]?(\\d++))?(?=[\"',\\s\\]}])");

  private DigitBudget() {}

  /**
   * Looks through a document in JSON or XML.
   *
   * @throws FaultException when its numbers have too many digits
   */
  static void check(String document) {
    double cost = 0;
    Matcher numbers = NUMBER.matcher(document);
    while (numbers.find()) {
      double digits = numbers.end(1) - numbers.start(1) + exponent(numbers);
      cost += digits < FEW ? 0 : digits * digits;
      if (cost > BUDGET) {
        throw refusal(numbers.group());
      }
    }
  }

  private static double exponent(Matcher number) {
    return number.start(2) < 0 ? 0 : Double.parseDouble(number.group(2));
  }

  private static FaultException refusal(String number) {
    String seen = number.length() > 40 ? number.substring(0, 37) + "..." : number;
    return new FaultException(
        new Fault(
            "",
            "numbers of so many digits as " + seen,
            "numbers that can be written out",
            "correct the number, or send the document as JSON of R4"));
  }
}
