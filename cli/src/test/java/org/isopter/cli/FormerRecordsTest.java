package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What to-fhir takes back of the records that were sent before. */
class FormerRecordsTest {

  private static final String RECORD =
      """
      isopter: 1
      record: { id: visit-1 }
      subject: { id: p-1 }
      performed: 2026-03-02T09:30:00Z
      status: final
      findings:
        intraocular-pressure: { right: 14 mmHg, left: 16 mmHg }
      """;

  @TempDir private Path folder;
  private String before = "";

  @BeforeEach
  void write() throws IOException {
    before = write("before.yaml", RECORD);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, UTF_8).toString();
  }

  private static Run send(String record, String former) {
    return Run.of("to-fhir", record, "--as", "transaction", "--former", former);
  }

  private static long errors(Run run) {
    return run.out().split("\"entered-in-error\"", -1).length - 1L;
  }

  @Test
  void takesBackTheFindingThatALaterVersionNoLongerHolds() throws IOException {
    String now = write("now.yaml", RECORD.replace(", left: 16 mmHg", ""));
    Run run = send(now, before).ok();
    assertEquals(1, errors(run), run.out());
    assertTrue(run.out().contains("\"value\" : 16"), run.out());
  }

  @Test
  void takesBackTheRecordThatAnotherAmends() throws IOException {
    String amends = RECORD.replace("{ id: visit-1 }", "{ id: visit-2 }\namends: { id: visit-1 }");
    String now = write("now.yaml", amends.replace("status: final", "status: amended"));
    // Two pressures, the panel and the report.
    assertEquals(4, errors(send(now, before).ok()));
  }

  @Test
  void takesNothingBackFromARecordThatHoldsTheSame() {
    assertEquals(0, errors(send(before, before).ok()));
  }

  @Test
  void saysWhichFormerRecordsAreNotTouched() throws IOException {
    String other = write("other.yaml", RECORD.replace("visit-1", "visit-9"));
    Run run = send(before, other).ok();
    assertEquals(0, errors(run));
    assertTrue(run.err().contains("1 former record not touched"), run.err());
  }

  @Test
  void refusesTwoFormerRecordsOfOneIdentifier() throws IOException {
    write("again.yaml", RECORD);
    Run run = send(before, folder.toString());
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("two records visit-1"), run.err());
  }

  @Test
  void refusesWhereNothingCanBeTakenBack() {
    Run run = Run.of("to-fhir", before, "--former", before);
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("--as transaction"), run.err());
  }

  @Test
  void refusesAFormerRecordThatCannotBeRead() throws IOException {
    String broken = write("broken.yaml", RECORD.replace("14 mmHg", "14 miles"));
    Run run = send(before, broken);
    assertFalse(run.status() == ExitStatus.OK, run::toString);
  }
}
