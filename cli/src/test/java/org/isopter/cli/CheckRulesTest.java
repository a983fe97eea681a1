package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.model.check.Rules;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the check command makes of the consistency rules. */
class CheckRulesTest {

  private static final String HEAD =
      """
      isopter: 1
      record: { id: r-1 }
      subject: { id: p-1 }
      performed: 2026-03-02T09:30:00Z
      status: final
      findings:
      """;
  private static final String WARNED =
      HEAD
          + """
            intraocular-pressure:
              right: { value: 4 mmHg, method: goldmann }
              left: { value: 12 mmHg, method: goldmann }
          """;
  private static final String WRONG =
      HEAD
          + """
            nystagmus:
              both: { value: downbeat, fast-phase: up }
          """;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @TempDir Path folder;

  private int check(Object... args) {
    String[] words = new String[args.length + 1];
    words[0] = "check";
    for (int i = 0; i < args.length; i++) {
      words[i + 1] = args[i].toString();
    }
    InputStream in = new ByteArrayInputStream(new byte[0]);
    return Main.run(
        new Streams(in, new PrintStream(out, true, UTF_8), new PrintStream(err, true, UTF_8)),
        words);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, UTF_8);
  }

  private String output() {
    return out.toString(UTF_8);
  }

  private String said() {
    return err.toString(UTF_8);
  }

  @Test
  void aWarningRefusesNoRecord() throws IOException {
    Path record = file("a.yaml", WARNED);
    assertEquals(ExitStatus.OK, check(record));
    assertTrue(
        output()
            .startsWith(
                record
                    + ":8:5  warning  findings.intraocular-pressure.right\n"
                    + "    rule    pressure-very-low: A pressure is below 5 mmHg.\n"
                    + "    saw     right intraocular-pressure 4 mmHg (method goldmann)\n"),
        output());
    assertTrue(said().contains("none refused, 1 remark"), said());
  }

  @Test
  void anErrorRefusesTheRecord() throws IOException {
    assertEquals(ExitStatus.REFUSED, check(file("a.yaml", WRONG), "--format", "json"));
    JsonNode issue = JsonMapper.shared().readTree(output()).get("issue").get(0);
    assertEquals("error", issue.get("severity").asString());
    assertEquals("business-rule", issue.get("code").asString());
    assertTrue(
        issue.get("diagnostics").asString().contains("nystagmus-phase-against-kind"), output());
  }

  @Test
  void whatCannotBeReadIsHeldAgainstNoRule() throws IOException {
    assertEquals(
        ExitStatus.REFUSED,
        check(file("a.yaml", WRONG + "  intraocular-pressure: { right: 4 }\n")));
    assertTrue(!output().contains("nystagmus-phase-against-kind"), output());
  }

  @Test
  void aSuppressedErrorRefusesNothing() throws IOException {
    Path known =
        file(
            "known.yml",
            """
            - rule: nystagmus-phase-against-kind
              file: a.yaml
              path: findings.nystagmus
              reason: Filmed and seen by two.
            """);
    assertEquals(ExitStatus.OK, check(file("a.yaml", WRONG), "--suppress", known));
    assertEquals("", output());
    assertTrue(said().contains("1 suppressed"), said());
  }

  @Test
  void aSuppressionHoldsOnlyWhereItSays() throws IOException {
    Path known =
        file(
            "known.yml",
            """
            - { rule: nystagmus-phase-against-kind, file: b.yaml, reason: Filmed. }
            - { rule: nystagmus-phase-against-kind, path: findings.nyst, reason: Filmed. }
            """);
    assertEquals(ExitStatus.REFUSED, check(file("a.yaml", WRONG), "--suppress", known));
    assertTrue(said().contains("in b.yaml suppressed nothing; remove it"), said());
    assertTrue(said().contains("at findings.nyst suppressed nothing; remove it"), said());
  }

  @Test
  void aSuppressionWithoutAReasonIsRefused() throws IOException {
    Path known =
        file(
            "known.yml",
            """
            - { rule: pressure-very-low }
            - { rule: pressure-too-low, reason: 5, eye: right }
            """);
    assertEquals(ExitStatus.USAGE, check(file("a.yaml", WARNED), "--suppress", known));
    assertTrue(said().contains("[0].reason: saw nothing"), said());
    assertTrue(said().contains("[1].rule: saw pressure-too-low"), said());
    assertTrue(said().contains("[1].reason: saw 5"), said());
    assertTrue(said().contains("[1]: saw the key eye"), said());
    assertEquals("", output());
  }

  @Test
  void sarifNamesEveryRuleAndPlacesEveryResult() throws IOException {
    Path wrong = file("a b.yaml", WRONG);
    Path warned = file("c.yaml", WARNED);
    assertEquals(ExitStatus.REFUSED, check(wrong, warned, "--format", "sarif"));
    JsonNode log = JsonMapper.shared().readTree(output());
    assertEquals("2.1.0", log.get("version").asString());
    JsonNode run = log.get("runs").get(0);
    assertEquals(1 + Rules.all().size(), run.get("tool").get("driver").get("rules").size());
    JsonNode first = run.get("results").get(0);
    assertEquals("nystagmus-phase-against-kind", first.get("ruleId").asString());
    assertEquals("error", first.get("level").asString());
    JsonNode place = first.get("locations").get(0).get("physicalLocation");
    assertTrue(
        place.get("artifactLocation").get("uri").asString().endsWith("/a%20b.yaml"), output());
    assertEquals(8, place.get("region").get("startLine").asInt());
    assertEquals("warning", run.get("results").get(1).get("level").asString());
  }

  @Test
  void aLogOfNothingIsComplete() throws IOException {
    assertEquals(ExitStatus.OK, check(file("a.yaml", HEAD + "  { }\n"), "--format", "sarif"));
    JsonNode run = JsonMapper.shared().readTree(output()).get("runs").get(0);
    assertEquals(0, run.get("results").size());
  }
}
