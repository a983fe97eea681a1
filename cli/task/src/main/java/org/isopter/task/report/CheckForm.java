package org.isopter.task.report;

import java.io.PrintStream;
import java.util.Locale;

/** How the check tells of records. */
public enum CheckForm {
  /** For people. */
  TEXT,
  /** For programs: a FHIR OperationOutcome on each line. */
  JSON,
  /** For tools that show findings beside the text: one SARIF 2.1.0 log. */
  SARIF;

  /** Returns what writes issues in this form. */
  public IssueSink on(PrintStream out) {
    return switch (this) {
      case TEXT -> new IssueText(out);
      case JSON -> new OutcomeLines(out);
      case SARIF -> new SarifLog(out);
    };
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
