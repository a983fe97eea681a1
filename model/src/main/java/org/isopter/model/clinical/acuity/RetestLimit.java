package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import org.isopter.model.finding.Citation;

/**
 * How far two measurements of an unchanged acuity lie apart, as published; 95 % of them.
 *
 * <p>Where studies of one kind of chart disagree, the limit is a span: what lies inside it is a
 * change by one study and none by another.
 */
public enum RetestLimit {
  /** Charts scored by letters, people with eye disease. */
  LETTERS_OF_PATIENTS(
      "0.18", "0.18", "Rosser, Laidlaw and Murdoch 2001, BJO 85:432: 0.18 by letters in patients"),
  /** Charts scored by letters, healthy eyes, no defocus. */
  LETTERS_IN_FOCUS("0.11", "0.11", "Rosser 2004, IOVS 45:1076, healthy eyes, no defocus"),
  /** Charts scored by letters, healthy eyes, half a dioptre of defocus. */
  LETTERS_HALF_DIOPTRE("0.18", "0.18", "Rosser 2004, IOVS 45:1076, 0.50 D of defocus"),
  /** Charts scored by letters, healthy eyes, one dioptre of defocus. */
  LETTERS_ONE_DIOPTRE("0.25", "0.25", "Rosser 2004, IOVS 45:1076, 1.00 D of defocus"),
  /** Traditional charts scored by lines. */
  LINES(
      "0.18",
      "0.33",
      "Snellen charts: 0.18 in Lim 2010, Eye 24:673; 0.30 in Laidlaw 2003, BJO 87:1232; 0.33 in"
          + " Rosser, Laidlaw and Murdoch 2001, BJO 85:432");

  private final BigDecimal least;
  private final BigDecimal most;
  private final Citation source;

  RetestLimit(String least, String most, String source) {
    this.least = new BigDecimal(least);
    this.most = new BigDecimal(most);
    this.source = new Citation(source);
  }

  /** Returns the greatest difference, in logMAR, that is no change by any of the studies. */
  public BigDecimal least() {
    return least;
  }

  /** Returns the difference, in logMAR, beyond which all of the studies call it a change. */
  public BigDecimal most() {
    return most;
  }

  /** Returns the limit in words: one number, or the span of the studies. */
  public String words() {
    return least.compareTo(most) == 0 ? least + " logMAR" : least + " to " + most + " logMAR";
  }

  /** Returns where the limit is published. */
  public Citation source() {
    return source;
  }
}
