package org.isopter.model.clinical.pressure;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;

/**
 * How far two measurements of an unchanged pressure lie apart, in mmHg, as published; 95 % of them,
 * within one session. Between visits the pressure itself changes as well, with the hour for one.
 *
 * <p>Where studies of one technique disagree, or one and two observers do, the limit is a span.
 * Techniques without a limit of their own have none: one that was found for a single instrument of
 * a kind is not given to the kind, but for the air puff, where no wider one was found.
 */
public enum PressureRetest {
  /** One observer twice at the least, two observers at the most. */
  GOLDMANN(
      Tonometry.GOLDMANN,
      "2.2",
      "4.6",
      "Goldmann: 2.2 by one observer and 2.6 between two, Tonnu and others 2005, BJO 89:847; -3.8"
          + " to 4.6 between two in healthy eyes, abstract in IOVS, article 2365240"),
  /** One instrument, three measurements. */
  NON_CONTACT(
      Tonometry.NON_CONTACT,
      "3.2",
      "3.2",
      "non-contact, one instrument: 3.2 in Tonnu and others 2005, BJO 89:847");

  private final Tonometry technique;
  private final BigDecimal least;
  private final BigDecimal most;
  private final Citation source;

  PressureRetest(Tonometry technique, String least, String most, String source) {
    this.technique = technique;
    this.least = new BigDecimal(least);
    this.most = new BigDecimal(most);
    this.source = new Citation(source);
  }

  /** Returns the limit of a technique; empty where none is carried. */
  public static Optional<PressureRetest> of(Concept technique) {
    for (PressureRetest limit : values()) {
      if (limit.technique == technique) {
        return Optional.of(limit);
      }
    }
    return Optional.empty();
  }

  /** Returns the greatest difference, in mmHg, that is no change by any of the studies. */
  public BigDecimal least() {
    return least;
  }

  /** Returns the difference, in mmHg, beyond which all of the studies call it a change. */
  public BigDecimal most() {
    return most;
  }

  /** Returns where the limit is published. */
  public Citation source() {
    return source;
  }
}
