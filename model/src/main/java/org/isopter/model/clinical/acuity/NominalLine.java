package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A line of a chart that steps by 0.1 logMAR. The names of such lines are rounded (6/9.5, 20/32 and
 * 4/6.3 are one line), so that an acuity belongs to a line when it is within 0.012 logMAR of it.
 *
 * <p>Source: the series of preferred numbers R'10 of ISO 3 (from memory), which names the lines.
 *
 * @param tenths the line's logMAR in tenths, -3 (6/3) to 20 (6/600)
 */
public record NominalLine(int tenths) {

  private static final List<String> PREFERRED =
      List.of("1", "1.25", "1.6", "2", "2.5", "3.2", "4", "5", "6.3", "8");
  private static final int FIRST = -3;
  private static final int LAST = 20;

  /**
   * Makes a line.
   *
   * @throws IllegalArgumentException when no chart has it
   */
  public NominalLine {
    if (tenths < FIRST || tenths > LAST) {
      throw new IllegalArgumentException("no chart has a line of " + tenths + " tenths of logMAR");
    }
  }

  /** Returns the line that an unrounded logMAR belongs to, or nothing between the lines. */
  public static Optional<NominalLine> near(double logMar) {
    long tenths = Math.round(logMar * 10);
    boolean close = Math.abs(logMar - tenths / 10.0) <= AcuityScale.LINE_TOLERANCE;
    return close && tenths >= FIRST && tenths <= LAST
        ? Optional.of(new NominalLine((int) tenths))
        : Optional.empty();
  }

  /** Returns the line's logMAR, with one decimal place. */
  public BigDecimal logMar() {
    return BigDecimal.valueOf(tenths, 1);
  }

  /** Returns the decimal acuity that names the line, for instance 0.63. */
  public BigDecimal decimal() {
    int decade = Math.floorDiv(-tenths, 10);
    BigDecimal leading = new BigDecimal(PREFERRED.get(Math.floorMod(-tenths, 10)));
    return leading.scaleByPowerOfTen(decade);
  }
}
