package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import org.isopter.model.finding.Citation;

/** How far two measurements of an unchanged acuity lie apart, as published; 95 % of them. */
public enum RetestLimit {
  /** Letter-scored charts, no defocus. */
  LETTERS_IN_FOCUS("0.11", "Rosser 2004, IOVS 45:1076, no defocus"),
  /** Letter-scored charts, half a dioptre of defocus. */
  LETTERS_HALF_DIOPTRE("0.18", "Rosser 2004, IOVS 45:1076, 0.50 D of defocus"),
  /** Letter-scored charts, one dioptre of defocus. */
  LETTERS_ONE_DIOPTRE("0.25", "Rosser 2004, IOVS 45:1076, 1.00 D of defocus"),
  /** Traditional charts: a difference of five rows of the table, one line, is not significant. */
  FIVE_ROWS("0.10", "DICOM PS3.17 RR.2.4: significant when it exceeds five rows of 0.02");

  private final BigDecimal logMar;
  private final Citation source;

  RetestLimit(String logMar, String source) {
    this.logMar = new BigDecimal(logMar);
    this.source = new Citation(source);
  }

  /** Returns the greatest difference, in logMAR, that is still no change. */
  public BigDecimal logMar() {
    return logMar;
  }

  /** Returns where the limit is published. */
  public Citation source() {
    return source;
  }
}
