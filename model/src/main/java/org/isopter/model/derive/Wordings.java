package org.isopter.model.derive;

import java.util.List;
import java.util.Locale;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Fault;

/** Statements around those of the clinical functions. */
final class Wordings {

  private Wordings() {}

  /** Returns the statement under a condition that its words leave out. */
  static Statement under(String condition, Statement statement) {
    String text = statement.text();
    String first = text.substring(0, 1).toLowerCase(Locale.ROOT);
    return new Statement(
        statement.id(),
        condition + " " + first + text.substring(1),
        statement.because(),
        statement.certainty(),
        statement.source());
  }

  /** Returns the statement with more words behind its own. */
  static Statement and(Statement statement, String more) {
    return new Statement(
        statement.id(),
        statement.text() + more,
        statement.because(),
        statement.certainty(),
        statement.source());
  }

  /** Says that a rule does not apply to what was recorded, and what it would have needed. */
  static Statement refused(String id, List<Fault> faults, Citation source) {
    Fault fault = faults.get(0);
    return new Statement(
        id,
        "The rule does not apply: it needs " + fault.wanted() + ".",
        List.of("recorded " + fault.seen()),
        Certainty.CANNOT_TELL,
        source);
  }
}
