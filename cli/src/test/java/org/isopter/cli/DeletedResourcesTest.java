package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An export with the bundles of what was deleted beside it (HL7 FHIR Bulk Data Access 2.0.0,
 * section on the response, {@code deleted}).
 */
class DeletedResourcesTest {

  private static final String LINE =
      "{\"resourceType\":\"Observation\",\"id\":\"%s\",\"status\":\"final\",\"code\":{\"coding\":[{"
          + "\"system\":\"http://snomed.info/sct\",\"code\":\"41633001\"}]},\"subject\":{"
          + "\"identifier\":{\"value\":\"p-1\"}},\"effectiveDateTime\":\"2026-03-03T09:10:00Z\","
          + "\"valueQuantity\":{\"value\":%s,\"system\":\"http://unitsofmeasure.org\",\"code\":"
          + "\"mm[Hg]\"},\"bodySite\":{\"coding\":[{\"system\":\"http://snomed.info/sct\",\"code\":"
          + "\"%s\"}]}}";

  private static final String DELETED =
      "{\"resourceType\":\"Bundle\",\"type\":\"transaction\",\"entry\":[{\"request\":{\"method\":"
          + "\"%s\",\"url\":\"%s\"}}]}\n";

  @TempDir Path folder;

  private Path export = Path.of("");
  private Path out = Path.of("");

  @BeforeEach
  void write() throws IOException {
    export = folder.resolve("export.ndjson");
    out = folder.resolve("records.ndjson");
    Files.writeString(
        export,
        String.join(
            "\n",
            LINE.formatted("o-1", "14", "362502000"),
            LINE.formatted("o-2", "41", "362503005"),
            ""));
  }

  private void deleted(String text) throws IOException {
    Files.writeString(folder.resolve("export.ndjson.deleted"), text);
  }

  private Run read(String... more) {
    List<String> all =
        new ArrayList<>(List.of("from-fhir", export.toString(), "--output", out.toString()));
    all.addAll(List.of(more));
    return Run.of(all.toArray(String[]::new));
  }

  private static final List<List<String>> WAYS =
      List.of(List.of(), List.of("--together", "all"), List.of("--together", "none"));

  @Test
  void leavesOutWhatWasDeletedAndSaysSo() throws IOException {
    deleted(DELETED.formatted("DELETE", "Observation/o-2") + "\n");
    for (List<String> way : WAYS) {
      Path report = folder.resolve("report.ndjson");
      List<String> all = new ArrayList<>(way);
      all.addAll(List.of("--report", report.toString()));
      Run run = read(all.toArray(String[]::new)).ok();
      String record = Files.readString(out);
      assertTrue(record.contains("14"), record);
      assertFalse(record.contains("41"), record);
      assertTrue(
          run.err().contains("1 resource left out: the export says it was deleted"), run.err());
      assertTrue(Files.readString(report).contains("Observation/o-2 was deleted, and is left out"));
      Path carried = folder.resolve("records.ndjson.carried");
      assertFalse(Files.exists(carried) && Files.readString(carried).contains("o-2"));
    }
  }

  @Test
  void readsEverythingWhereNothingOfItWasDeleted() throws IOException {
    for (String text : List.of("", DELETED.formatted("DELETE", "Patient/o-2"))) {
      deleted(text);
      for (List<String> way : WAYS) {
        Run run = read(way.toArray(String[]::new)).ok();
        assertTrue(Files.readString(out).contains("41"));
        assertFalse(run.err().contains("left out:"), run.err());
      }
    }
  }

  /** To read on would bring back what was deleted. */
  @Test
  void readsNothingWhereItIsNotKnownWhatWasDeleted() throws IOException {
    for (String text :
        List.of(
            "Observation/o-2",
            DELETED.formatted("PUT", "Observation/o-2"),
            DELETED.formatted("DELETE", "Observation?identifier=o-2"))) {
      deleted(text);
      for (List<String> way : WAYS) {
        Run run = read(way.toArray(String[]::new));
        assertEquals(ExitStatus.INTERNAL, run.status(), run::err);
        assertTrue(run.err().contains("export.ndjson.deleted:1: wanted a bundle"), run.err());
        assertFalse(Files.exists(out) && Files.readString(out).contains("41"));
      }
    }
  }

  @Test
  void leavesOutAnEntryOfABundleThatWasDeleted() throws IOException {
    Path bundle = folder.resolve("page.json");
    Files.writeString(
        bundle,
        "{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"entry\":[{\"resource\":"
            + LINE.formatted("o-1", "14", "362502000")
            + "},{\"resource\":"
            + LINE.formatted("o-2", "41", "362503005")
            + "}]}");
    Files.writeString(
        folder.resolve("page.json.deleted"),
        DELETED.formatted("DELETE", "https://host.example/fhir/Observation/o-2"));
    Run run = Run.of("from-fhir", bundle.toString(), "--policy", "extract").ok();
    assertTrue(run.out().contains("14"));
    assertFalse(run.out().contains("41"));
    assertTrue(run.err().contains("1 resource left out"), run.err());
  }

  private Run pool() throws IOException {
    Path key = Files.writeString(folder.resolve("key"), "f3a9c1077be24d5586e0b1d94a6c2f18");
    return Run.of(
        "pool",
        export.toString(),
        "--key-file",
        key.toString(),
        "--output",
        folder.resolve("pool").toString(),
        "--format",
        "csv",
        "--replace");
  }

  private String pooled() throws IOException {
    return Files.readString(folder.resolve("pool").resolve("findings.csv"));
  }

  @Test
  void poolsNothingThatWasDeleted() throws IOException {
    pool().ok();
    assertTrue(pooled().contains("41"));
    deleted(DELETED.formatted("DELETE", "Observation/o-2"));
    Run run = pool();
    assertTrue(pooled().contains("14"), run.err());
    assertFalse(pooled().contains("41"), run.err());
    assertTrue(
        Files.readString(folder.resolve("pool").resolve("leftover.ndjson")).contains("deleted"));
  }

  @Test
  void poolsNothingOfAFileOfWhichItIsNotKnownWhatWasDeleted() throws IOException {
    deleted("Observation/o-2");
    Run run = pool();
    assertEquals(ExitStatus.INTERNAL, run.status(), run::err);
    assertTrue(run.err().contains("export.ndjson.deleted:1: wanted a bundle"), run.err());
  }
}
