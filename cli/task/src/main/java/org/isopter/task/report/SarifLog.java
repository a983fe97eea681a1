package org.isopter.task.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.check.ConsistencyRule;
import org.isopter.model.check.Rules;
import org.isopter.task.io.Messages;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes issues as one SARIF 2.1.0 log (OASIS, errata 01) with the rules and their help.
 *
 * <p>Results are written as they come, so that the log needs no more memory for more records; it is
 * complete once it is closed.
 */
final class SarifLog implements IssueSink {

  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

  /** What faults that no consistency rule tells go by: the record could not be read. */
  private static final String FORMAT = "record-format";

  private final JsonGenerator json;

  SarifLog(PrintStream out) {
    json =
        JsonFactory.builder()
            .build()
            .createGenerator(ObjectWriteContext.empty(), new PrintWriter(out, false, UTF_8));
    begin();
  }

  private void begin() {
    json.writeStartObject();
    json.writeStringProperty("$schema", SCHEMA);
    json.writeStringProperty("version", "2.1.0");
    json.writeArrayPropertyStart("runs");
    json.writeStartObject();
    json.writeObjectPropertyStart("tool");
    json.writeObjectPropertyStart("driver");
    json.writeStringProperty("name", "Isopter");
    json.writeArrayPropertyStart("rules");
    format();
    Rules.all().forEach(this::rule);
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndObject();
    json.writeArrayPropertyStart("results");
  }

  private void format() {
    rule(
        FORMAT,
        "The record cannot be read.",
        "A record keeps to the record format; what it does not say is never guessed.",
        "Correct the text where the message points.",
        "error");
  }

  private void rule(ConsistencyRule rule) {
    rule(
        rule.id(),
        rule.what(),
        rule.why(),
        "Wanted: %s. What to do: %s. Source: %s."
            .formatted(rule.wanted(), rule.suggestion(), rule.source().text()),
        level(Issue.Severity.valueOf(rule.severity().name())));
  }

  private void rule(String id, String what, String why, String help, String level) {
    json.writeStartObject();
    json.writeStringProperty("id", id);
    text("shortDescription", what);
    text("fullDescription", why);
    text("help", help);
    json.writeObjectPropertyStart("defaultConfiguration");
    json.writeStringProperty("level", level);
    json.writeEndObject();
    json.writeEndObject();
  }

  @Override
  public void put(Position document, List<Issue> issues) {
    issues.forEach(this::result);
  }

  private void result(Issue issue) {
    json.writeStartObject();
    json.writeStringProperty("ruleId", issue.rule().map(ConsistencyRule::id).orElse(FORMAT));
    json.writeStringProperty("level", level(issue.severity()));
    text("message", Messages.visible(words(issue)));
    json.writeArrayPropertyStart("locations");
    json.writeStartObject();
    physical(issue.at());
    if (!issue.path().isEmpty()) {
      logical(Messages.visible(issue.path()));
    }
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
  }

  private void physical(Position at) {
    json.writeObjectPropertyStart("physicalLocation");
    json.writeObjectPropertyStart("artifactLocation");
    json.writeStringProperty("uri", uri(at.file()));
    json.writeEndObject();
    if (at.line() > 0) {
      json.writeObjectPropertyStart("region");
      json.writeNumberProperty("startLine", at.line());
      if (at.column() > 0) {
        json.writeNumberProperty("startColumn", at.column());
      }
      json.writeEndObject();
    }
    json.writeEndObject();
  }

  private void logical(String path) {
    json.writeArrayPropertyStart("logicalLocations");
    json.writeStartObject();
    json.writeStringProperty("fullyQualifiedName", path);
    json.writeEndObject();
    json.writeEndArray();
  }

  private void text(String key, String words) {
    json.writeObjectPropertyStart(key);
    json.writeStringProperty("text", words);
    json.writeEndObject();
  }

  @Override
  public void finish() {
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
  }

  private static String level(Issue.Severity severity) {
    return switch (severity) {
      case FATAL, ERROR -> "error";
      case WARNING -> "warning";
      case INFORMATION -> "note";
    };
  }

  private static String words(Issue issue) {
    return issue.said().stream()
        .map(said -> (said.word() + " " + said.text()).strip())
        .collect(Collectors.joining("; "));
  }

  /** A name is a relative reference; blanks and the like are escaped. */
  private static String uri(String file) {
    try {
      return new URI(null, null, file, null).getRawPath();
    } catch (URISyntaxException never) {
      throw new IllegalStateException("a path alone is always a reference", never);
    }
  }
}
