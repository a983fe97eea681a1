package org.isopter.model.value;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * An acuity in the notation in which it was recorded; conversions are derived, never stored here.
 *
 * <p>The text form gives the way the trade writes it, and {@link AcuityText#parse} reads that again
 * without loss.
 */
public sealed interface Acuity {

  /**
   * A Snellen fraction, testing distance over letter size, with the letters read beyond the line
   * (plus) or missed on it (minus).
   *
   * @param numerator the testing distance, in {@code unit}
   * @param denominator the distance at which the letter subtends five minutes of arc
   * @param unit {@link Unit#METRE} or {@link Unit#FOOT}, never mixed
   * @param letters the suffix, 0 for none; it has no defined numerical value on a chart with an
   *     unknown number of letters per line (DICOM PS3.17 RR.2.3)
   */
  record Fraction(BigDecimal numerator, BigDecimal denominator, Unit unit, int letters)
      implements Acuity {
    @Override
    public String toString() {
      return AcuityText.of(this);
    }
  }

  /** A decimal acuity, 1.0 being 6/6. */
  record DecimalFraction(BigDecimal value) implements Acuity {
    @Override
    public String toString() {
      return value.toPlainString() + " decimal";
    }
  }

  /** The logarithm of the minimum angle of resolution in minutes of arc; 0 is 6/6. */
  record LogMar(BigDecimal value) implements Acuity {
    @Override
    public String toString() {
      return value.toPlainString() + " logMAR";
    }
  }

  /** The number of letters read on a chart that is scored by letters. */
  record Letters(int count) implements Acuity {
    @Override
    public String toString() {
      return count + " letters";
    }
  }

  /**
   * Vision too low for a chart.
   *
   * @param category what was still seen
   * @param distance the distance at which it was shown, when recorded
   */
  record Low(LowVision category, Optional<Quantity> distance) implements Acuity {
    @Override
    public String toString() {
      return category.abbreviation() + distance.map(metres -> " " + metres).orElse("");
    }
  }

  /** Near print in N points (Times New Roman point size); a size of print, not an angle. */
  record Points(BigDecimal size) implements Acuity {
    @Override
    public String toString() {
      return "N" + size.toPlainString();
    }
  }

  /** Near print on a Jaeger card, whose steps differ between printers. */
  record Jaeger(JaegerType type) implements Acuity {
    @Override
    public String toString() {
      return type.word();
    }
  }

  /** Near print in M units: the distance in metres at which it subtends five minutes of arc. */
  record MUnits(BigDecimal size) implements Acuity {
    @Override
    public String toString() {
      return size.toPlainString() + " M";
    }
  }

  /** The pinhole did not improve the acuity. */
  record NotImproved() implements Acuity {
    @Override
    public String toString() {
      return "NI";
    }
  }
}
