package org.isopter.model.value;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Tells metres from feet in a bare Snellen fraction, and refuses where both are possible.
 *
 * <p>A numerator of 20 is feet, one of up to 6 is metres (common practice, no source). A fraction
 * such as 6/20 or 20/6 belongs to no chart in either unit: it is most likely a mixture.
 */
final class SnellenLines {

  private static final BigDecimal SIX = BigDecimal.valueOf(6);
  private static final BigDecimal TWENTY = BigDecimal.valueOf(20);

  /** Lines of a 20 ft chart that no 6 m chart has. */
  private static final Set<BigDecimal> ONLY_FEET =
      numbers(
          "16", "20", "25", "32", "40", "50", "63", "70", "80", "100", "125", "160", "200", "400",
          "800");

  /** Lines that stand only on a 20 ft chart, whatever the distance in metres. */
  private static final Set<BigDecimal> FAR_FEET = numbers("200", "400", "800");

  private SnellenLines() {}

  /** Returns the unit of a bare fraction, or nothing where it cannot be known. */
  static Optional<Unit> unitOf(BigDecimal numerator, BigDecimal denominator) {
    if (numerator.compareTo(TWENTY) == 0) {
      return denominator.compareTo(BigDecimal.TEN) < 0 ? Optional.empty() : feet();
    }
    if (numerator.compareTo(SIX) > 0 || numerator.signum() == 0) {
      return Optional.empty();
    }
    Set<BigDecimal> foreign = numerator.compareTo(SIX) == 0 ? ONLY_FEET : FAR_FEET;
    return foreign.contains(denominator) ? Optional.empty() : Optional.of(Unit.METRE);
  }

  static Fault mixed(String text, BigDecimal numerator) {
    boolean oneUnit = numerator.compareTo(TWENTY) == 0 || numerator.compareTo(SIX) <= 0;
    String wanted =
        oneUnit
            ? "one unit, 6/9 in metres or 20/40 in feet: this looks like metres and feet mixed"
            : "a numerator of 20 (feet) or up to 6 (metres)";
    String advice =
        "correct it, or name its unit (\"%s m\", \"%s ft\") or the testing distance"
            .formatted(text.strip(), text.strip());
    return new Fault("", "\"" + text + "\"", wanted, advice);
  }

  private static Optional<Unit> feet() {
    return Optional.of(Unit.FOOT);
  }

  private static Set<BigDecimal> numbers(String... list) {
    // A sorted set compares by value: 20 and 20.0 are one line.
    Set<BigDecimal> numbers = new TreeSet<>();
    for (String number : list) {
      numbers.add(new BigDecimal(number));
    }
    return numbers;
  }
}
