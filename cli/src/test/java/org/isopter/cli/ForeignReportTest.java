package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What is reported for FHIR that other systems sent: in words, in the report and in the table. */
class ForeignReportTest {

  private static final String CLINIC = "docs/foreign/clinic.json";

  @TempDir Path folder;

  @Test
  void nothingOfAPersonIsTold() throws IOException {
    Path report = folder.resolve("report.ndjson");
    Path table = folder.resolve("table.txt");
    Run run =
        Run.of(
            "from-fhir",
            CLINIC,
            "--policy",
            "extract",
            "--report",
            report.toString(),
            "--table",
            table.toString());
    String output = run.ok().err() + Files.readString(report) + Files.readString(table);
    for (String never : List.of("Oduya", "1971", "qi-2207", "breath", "6/9-2", "6/12", "0.8")) {
      assertFalse(output.contains(never), never);
    }
    assertTrue(output.contains("Observation/va-bare"), output);
  }

  @Test
  void theReportHasAnOutcomeForEachResourceWithItsRules() throws IOException {
    Path report = folder.resolve("report.ndjson");
    Run.of("from-fhir", CLINIC, "--policy", "extract", "--report", report.toString()).ok();
    List<JsonNode> outcomes =
        Files.readAllLines(report).stream().map(JsonMapper.shared()::readTree).toList();
    assertEquals(9, outcomes.size());
    JsonNode acuity = outcomes.get(3).at("/issue/0");
    assertEquals("translated", acuity.at("/details/text").stringValue());
    assertEquals("acuity-text", acuity.at("/details/coding/0/code").stringValue());
    JsonNode kept = outcomes.get(7).at("/issue/0");
    assertEquals("no-side", kept.at("/details/text").stringValue());
    assertEquals("warning", kept.at("/severity").stringValue());
  }

  @Test
  void theTableEndsWithAllCounts() throws IOException {
    Path table = folder.resolve("table.txt");
    Run.of("from-fhir", CLINIC, "--policy", "extract", "--table", table.toString()).ok();
    List<String> lines = Files.readAllLines(table, UTF_8);
    assertTrue(lines.contains("kept        docs/foreign/clinic.json  Observation/va-unknown"));
    assertTrue(
        lines.stream().anyMatch(line -> line.matches("  rule acuity-text +2")), lines.toString());
    assertTrue(
        lines.stream().anyMatch(line -> line.matches("  kept no-side +1")), lines.toString());
  }

  @Test
  void theCatalogueShowsTheRulesInEveryForm() {
    String text = Run.of("catalogue", "--foreign").ok().out();
    JsonNode json =
        JsonMapper.shared()
            .readTree(Run.of("catalogue", "--foreign", "--format", "json").ok().out());
    String page = Run.of("catalogue", "--foreign", "--format", "markdown").ok().out();
    assertEquals(json.size(), text.lines().count());
    for (JsonNode rule : json) {
      String id = rule.path("id").stringValue();
      assertTrue(text.contains(id + " ") && page.contains("| `" + id + "` |"), id);
      assertTrue(rule.path("takes").isObject() && rule.path("doesNotTake").isObject(), id);
    }
    Run unknown = Run.of("catalogue", "--foreign", "acuity-x");
    assertEquals(ExitStatus.USAGE, unknown.status());
    assertTrue(unknown.err().contains("there is acuity-"), unknown.err());
  }
}
