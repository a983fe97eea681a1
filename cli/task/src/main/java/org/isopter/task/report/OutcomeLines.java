package org.isopter.task.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.run.OutcomeIssue;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Messages;

/** Writes issues for programs: one FHIR R4 OperationOutcome a line, one for each document. */
final class OutcomeLines implements IssueSink {

  private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/");
  private static final Pattern NAME = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*-[A-Za-z0-9_-]*");

  private final OutputStream out;

  OutcomeLines(OutputStream out) {
    this.out = out;
  }

  @Override
  public void put(Position document, List<Issue> issues) {
    List<Issue> shown = issues.isEmpty() ? List.of(allIsWell(document)) : issues;
    try {
      out.write((line(shown) + "\n").getBytes(UTF_8));
    } catch (IOException failed) {
      throw new UnwritableException("the report", failed);
    }
  }

  /** An OperationOutcome needs an issue, also where nothing is wrong. */
  private static Issue allIsWell(Position document) {
    return Issue.of(Issue.Severity.INFORMATION, "informational", document, "no fault found");
  }

  private static String line(List<Issue> issues) {
    return OutcomeIssue.outcome(issues.stream().map(OutcomeLines::fhir).toList());
  }

  private static OutcomeIssue fhir(Issue issue) {
    return new OutcomeIssue(
        issue.severity().name().toLowerCase(Locale.ROOT),
        issue.type(),
        "",
        List.of(),
        Messages.visible(issue.at() + ": " + words(issue)),
        expression(Messages.visible(issue.path())));
  }

  private static String words(Issue issue) {
    return issue.said().stream()
        .map(said -> said.word().equals("hint") ? said.text() : said.word() + " " + said.text())
        .map(String::strip)
        .collect(Collectors.joining("; "));
  }

  /** A name with a hyphen is no FHIRPath unless it stands in backticks. */
  static String expression(String path) {
    return NAME.matcher(COMMENT.matcher(path).replaceAll("")).replaceAll("`$0`");
  }
}
