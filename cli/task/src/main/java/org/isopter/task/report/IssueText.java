package org.isopter.task.report;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import org.isopter.model.text.TextColumns;
import org.isopter.task.io.Messages;

/** Writes issues for people: a line that says where, and below it what was seen and wanted. */
public final class IssueText implements IssueSink {

  private static final int WORD_WIDTH = 8;

  private final PrintStream out;

  public IssueText(PrintStream out) {
    this.out = out;
  }

  @Override
  public void put(Position document, List<Issue> issues) {
    issues.forEach(this::write);
  }

  private void write(Issue issue) {
    StringBuilder head = new StringBuilder(issue.at().toString());
    if (issue.severity() != Issue.Severity.ERROR) {
      head.append("  ").append(issue.severity().name().toLowerCase(Locale.ROOT));
    }
    if (!issue.path().isEmpty()) {
      head.append("  ").append(issue.path());
    }
    out.println(Messages.visible(head.toString()));
    issue.said().forEach(this::write);
  }

  private void write(Issue.Said said) {
    String indented = said.text().replace("\n", "\n" + " ".repeat(4 + WORD_WIDTH));
    String word = said.word().isEmpty() ? "" : TextColumns.left(said.word(), WORD_WIDTH - 1) + " ";
    out.println(Messages.visible("    " + word + indented));
  }
}
