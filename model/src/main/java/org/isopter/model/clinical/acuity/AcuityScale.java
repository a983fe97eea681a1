package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import org.isopter.model.value.Acuity;

/**
 * The unrounded logMAR of an acuity's line; a suffix is not counted. Source: DICOM PS3.17, Annex
 * RR.2.4.
 */
public final class AcuityScale {

  /** Named lines are rounded: any of their names lies this close to the 0.1 step it names. */
  public static final double LINE_TOLERANCE = 0.012;

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

  /** Returns the letters read beyond the line (plus) or missed on it (minus). */
  public static int suffix(Acuity acuity) {
    return acuity instanceof Acuity.Fraction line ? line.letters() : 0;
  }
}
