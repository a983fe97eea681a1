package org.isopter.task.report;

import java.io.PrintStream;

/** How a command that only tells of its inputs does so. */
public enum WordForm {
  /** For people. */
  TEXT,
  /** For programs: a FHIR OperationOutcome on each line. */
  JSON;

  /** Returns what writes issues in this form. */
  public IssueSink on(PrintStream out) {
    return this == TEXT ? new IssueText(out) : new OutcomeLines(out);
  }

  @Override
  public String toString() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
