package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.value.Acuity;

/**
 * The unrounded logMAR of an acuity's line; a suffix is not counted. Source: DICOM PS3.17, Annex
 * RR.2.4.
 */
public final class AcuityScale {

  /** Named lines are rounded: any of their names lies this close to the 0.1 step it names. */
  public static final double LINE_TOLERANCE = 0.012;

  /** One row of a table of 0.02 steps: less than any step between lines. */
  private static final double ONE_LETTER = 0.02;

  /** As much as the usual lines are apart, and less than 6/36 is from 6/60. */
  private static final double PART_OF_A_LINE = 0.2;

  private AcuityScale() {}

  /** Returns the logMAR, or nothing where the notation has none. */
  public static OptionalDouble logMar(Acuity acuity) {
    if (acuity instanceof Acuity.Fraction line) {
      return fromRatio(line.numerator(), line.denominator());
    }
    if (acuity instanceof Acuity.DecimalFraction decimal) {
      return fromRatio(decimal.value(), BigDecimal.ONE);
    }
    if (acuity instanceof Acuity.LogMar logMar) {
      return OptionalDouble.of(logMar.value().doubleValue());
    }
    return acuity instanceof Acuity.Letters letters
        ? OptionalDouble.of((85 - letters.count()) / 50.0)
        : OptionalDouble.empty();
  }

  private static OptionalDouble fromRatio(BigDecimal seen, BigDecimal size) {
    boolean sound = seen.signum() > 0 && size.signum() > 0;
    return sound
        ? OptionalDouble.of(Math.log10(size.doubleValue()) - Math.log10(seen.doubleValue()))
        : OptionalDouble.empty();
  }

  /** Returns the letters beyond the line or missed on it; -1 also where it was read in part. */
  public static int suffix(AcuityReading reading) {
    int letters = suffix(reading.acuity());
    return letters == 0 && reading.isInPart() ? -1 : letters;
  }

  /** Returns how much worse than its line a reading of which letters were missed may be. */
  public static double missed(AcuityReading reading) {
    return suffix(reading) >= 0 ? 0 : reading.isInPart() ? PART_OF_A_LINE : ONE_LETTER;
  }

  /** Returns the letters read beyond the line (plus) or missed on it (minus). */
  public static int suffix(Acuity acuity) {
    return acuity instanceof Acuity.Fraction line ? line.letters() : 0;
  }
}
