package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.isopter.model.simulate.Cohort;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command generate. */
class GenerateTest {

  @Test
  void namesTheFormsThatThereAre() {
    Run run = Run.of("generate", "--persons", "1", "--format", "csv");
    assertEquals(2, run.status());
    assertTrue(run.err().contains("expected one of [ndjson, fhir-ndjson] but was 'csv'"), run::err);
  }

  @Test
  void writesTheExaminationsOfTheCohortInItsOrder() {
    Run run = Run.of("generate", "--persons", "230", "--seed", "7").ok();
    var expected =
        new Cohort(230, 7).exams().map(new org.isopter.mapper.record.RecordWriter()::line).toList();
    assertEquals(expected, run.out().lines().toList());
    assertTrue(run.err().contains("not to be taken as epidemiology"), run.err());
    assertTrue(run.err().contains(expected.size() + " examinations of 230 persons"), run.err());
  }

  @Test
  void writesAFileThatTheOtherCommandsTake(@TempDir Path folder) throws IOException {
    String file = folder.resolve("all.ndjson").toString();
    Run.of("generate", "--persons", "25", "--seed", "3", "--output", file).ok();
    Run run = Run.of("check", file).ok();
    assertTrue(run.err().contains("no fault found"), run.err());
    assertTrue(Run.of("round-trip", file).ok().err().contains("identical"));
    assertEquals(
        Run.of("generate", "--persons", "25", "--seed", "3", "--output", "-").ok().out(),
        Files.readString(Path.of(file), UTF_8));
  }

  @Test
  void writesBundlesThatComeBackAsTheRecords() {
    String bundles = Run.of("generate", "--persons", "20", "--format", "fhir-ndjson").ok().out();
    String records = Run.of("generate", "--persons", "20").ok().out();
    Run back =
        Run.with(bundles, "from-fhir", "-", "--input-format", "ndjson", "--format", "ndjson").ok();
    assertEquals(records, back.out());
  }

  @Test
  void writesTheGroupsAsTheFileOfPersonsThatAPoolTakes(@TempDir Path folder) throws IOException {
    Path groups = folder.resolve("groups.csv");
    Path file = folder.resolve("all.ndjson");
    Run.of("generate", "--persons=40", "--seed=3", "--groups=" + groups, "--output=" + file).ok();
    Cohort cohort = new Cohort(40, 3);
    List<String> lines = Files.readAllLines(groups, UTF_8);
    assertEquals("id,system,group", lines.get(0));
    assertEquals(41, lines.size());
    assertEquals(
        "gen-p-3-17,https://quillhaven.example/people," + cohort.group(17).word(), lines.get(18));
    Path pool = folder.resolve("pool");
    Run run =
        Run.of(
                "pool",
                file.toString(),
                "--persons=" + groups,
                "--key-file=docs/key-for-the-demo.txt",
                "--format=csv",
                "--output=" + pool)
            .ok();
    assertTrue(run.err().contains("40 with an examination here"), run::err);
    assertTrue(Files.readString(pool.resolve("examinations.csv"), UTF_8).contains(",healthy,"));
  }

  @Test
  void wantsAtLeastOnePerson() {
    Run run = Run.of("generate", "--persons", "0");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("wanted 1 or more"), run.err());
  }
}
