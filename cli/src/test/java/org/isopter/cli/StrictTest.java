package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the commands that use records do with those that contradict themselves. */
class StrictTest {

  /** Jerks are named after the fast phase: a downbeat nystagmus has none that goes up. */
  private static final String WRONG =
      """
      isopter: 1
      record: { id: wrong-1 }
      subject: { id: p-1 }
      performed: 2026-03-02T09:30:00Z
      status: final
      findings:
        nystagmus:
          both: { value: downbeat, fast-phase: up }
      """;

  private static final String RULE = "nystagmus-phase-against-kind";
  private static final String SUM = "isopter: 1 record with errors (" + RULE + " 1)";

  @TempDir private Path folder;
  private String wrong = "";
  private String right = "";

  @BeforeEach
  void write() throws IOException {
    wrong = Files.writeString(folder.resolve("a.yaml"), WRONG, UTF_8).toString();
    String other = WRONG.replace("wrong-1", "right-1").replace("up }", "down }");
    right = Files.writeString(folder.resolve("b.yaml"), other, UTF_8).toString();
  }

  @Test
  void namesTheErrorsOfWhatItTurnsIntoFhir() throws IOException {
    Path report = folder.resolve("report.ndjson");
    Run run = Run.of("to-fhir", wrong, right, "--report", report.toString()).ok();
    assertEquals(2, run.out().lines().count());
    assertTrue(
        run.err().contains("isopter: " + wrong + ": 1 error by the rules: " + RULE), run.err());
    assertTrue(run.err().contains(SUM + "; 'isopter check' shows them"), run.err());
    assertTrue(Files.readString(report, UTF_8).contains("\"code\":\"business-rule\""));
  }

  @Test
  void refusesThemForFhirWhereItIsStrict() {
    Run run = Run.of("to-fhir", wrong, right, "--strict");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertEquals(1, run.out().lines().count());
    assertTrue(run.out().contains("right-1"), run.out());
    assertTrue(run.err().contains("rule    " + RULE), run.err());
    assertTrue(run.err().contains(SUM + "\n"), run.err());
  }

  @Test
  void namesThemBesideAPageAndRefusesThePageWhereItIsStrict() {
    Run page = Run.of("summary", wrong).ok();
    assertFalse(page.out().isEmpty());
    assertTrue(page.err().contains(SUM), page.err());
    Run strict = Run.of("summary", wrong, "--strict");
    assertEquals(ExitStatus.REFUSED, strict.status());
    assertEquals("", strict.out());
  }

  @Test
  void namesThemByRuleAndNumberInAPool() {
    Run run = pool("named").ok();
    assertTrue(run.err().contains("isopter: input 1: 1 error by the rules: " + RULE), run.err());
    assertTrue(run.err().contains("2 examinations with 2 facts"), run.err());
    assertFalse(run.err().contains("downbeat"), run.err());
  }

  @Test
  void leavesThemOutOfAPoolWhereItIsStrict() throws IOException {
    Run run = pool("strict", "--strict");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertTrue(run.err().contains("1 examination with 1 fact"), run.err());
    assertFalse(run.err().contains("downbeat"), run.err());
    String left = Files.readString(folder.resolve("strict/leftover.ndjson"), UTF_8);
    assertTrue(left.contains("record-errors"), left);
  }

  @Test
  void looksForThemInFhirAsInRecords() throws IOException {
    Path bundles = folder.resolve("fhir.ndjson");
    Files.writeString(bundles, Run.of("to-fhir", wrong, right).ok().out(), UTF_8);
    wrong = bundles.toString();
    Run named = pool("named").ok();
    assertTrue(
        named.err().contains("isopter: input 1:1: 1 error by the rules: " + RULE), named.err());
    assertTrue(named.err().contains("3 examinations with 3 facts"), named.err());
    Run strict = pool("strict", "--strict");
    assertEquals(ExitStatus.REFUSED, strict.status());
    assertTrue(strict.err().contains("2 examinations with 2 facts"), strict.err());
  }

  /** What another system wrote is no record, and contradicts itself as well. */
  @Test
  void looksForThemInFhirOfOthers() throws IOException {
    String bundle = Run.of("to-fhir", wrong).ok().out();
    String theirs = bundle.replaceAll("(urn:uuid:[0-9a-f-]{34})[0-9a-f]{2}", "$1");
    wrong = Files.writeString(folder.resolve("theirs.json"), theirs, UTF_8).toString();
    Run named = pool("named");
    assertTrue(named.err().contains(RULE), named.err());
    Run strict = pool("strict", "--strict");
    assertEquals(ExitStatus.REFUSED, strict.status());
    assertTrue(strict.err().contains("1 examination with 1 fact"), strict.err());
    String left = Files.readString(folder.resolve("strict/leftover.ndjson"), UTF_8);
    assertTrue(left.contains("record-errors"), left);
  }

  @Test
  void leavesThemOutOfADescriptionWhereItIsStrict() {
    Run run = Run.of("describe", wrong, right, "--strict");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertTrue(run.err().contains("rule    " + RULE), run.err());
    assertTrue(run.err().contains("1 examination with 1 fact"), run.err());
    assertTrue(Run.of("describe", wrong, right).ok().err().contains("2 examinations with 2 facts"));
    pool("made").ok();
    Run late = Run.of("describe", folder.resolve("made").toString(), "--strict");
    assertEquals(ExitStatus.USAGE, late.status());
    assertTrue(late.err().contains("say it to 'isopter pool'"), late.err());
  }

  @Test
  void saysNothingOfRecordsWithoutErrors() {
    assertFalse(Run.of("summary", right).ok().err().contains("error"));
  }

  private Run pool(String name, String... more) {
    String[] words = {"pool", wrong, right, "--identified", "-o", folder.resolve(name).toString()};
    String[] all = Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return Run.of(all);
  }
}
