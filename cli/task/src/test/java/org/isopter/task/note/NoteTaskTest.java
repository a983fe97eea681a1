package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.model.exam.Header;
import org.isopter.model.note.habit.Habits;
import org.isopter.task.input.InputForm;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A note at a terminal, added to a record, and under the settings of a department. */
class NoteTaskTest {

  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-03T14:10:00+00:00");

  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @Test
  void asksAtATerminalWhatAnItemMeans() throws IOException {
    assertEquals(ExitStatus.OK, run("IOP 14/16", "2\n", Habits.none(), Optional.empty()));
    assertTrue(err().contains("2 = IOP R 16 L 14"), err());
    assertTrue(out().contains("16"), out());
  }

  @Test
  void leavesUnreadWhatIsNotAnswered() throws IOException {
    assertEquals(ExitStatus.REFUSED, run("IOP 14/16", "\n", Habits.none(), Optional.empty()));
    assertEquals("", out());
    assertEquals(ExitStatus.REFUSED, run("IOP 14/16", "3\n", Habits.none(), Optional.empty()));
    assertEquals(ExitStatus.REFUSED, run("IOP 14/16", "", Habits.none(), Optional.empty()));
  }

  @Test
  void writesNoRecordOfNothing() throws IOException {
    assertEquals(ExitStatus.REFUSED, run(".", "", Habits.none(), Optional.empty()));
    assertTrue(err().contains("the note is empty"), err());
    assertEquals(ExitStatus.REFUSED, run("gone.txt", "", Habits.none(), Optional.empty()));
    assertTrue(err().contains("gone.txt: saw no such file"), err());
    assertEquals("", out());
  }

  @Test
  void readsAFileWithAByteOrderMark() throws IOException {
    Path file = folder.resolve("marked.txt");
    Files.writeString(file, "\uFEFFIOP R 14");
    assertEquals(ExitStatus.OK, run(file.toString(), "", Habits.none(), Optional.empty()));
  }

  @Test
  void namesWhatNoTerminalShowsAndIsBrief() throws IOException {
    run("IOP R 14 \u200F L 16", "", Habits.none(), Optional.empty());
    assertTrue(err().contains("<U+200F>"), err());
    run("x".repeat(100_000), "", Habits.none(), Optional.empty());
    assertTrue(err().length() < 5_000, () -> "long: " + err().length());
  }

  @Test
  void addsToARecordAndReplacesNothing() throws IOException {
    run("IOP R 14", "", Habits.none(), Optional.empty());
    Path record = folder.resolve("record.yaml");
    Files.writeString(record, out());
    out.reset();
    assertEquals(ExitStatus.OK, run("IOP L 16", "", Habits.none(), Optional.of(record)));
    assertTrue(out().contains("14") && out().contains("16"), out());
    assertTrue(out().contains("e-1"), out());
    assertEquals(ExitStatus.REFUSED, run("IOP R 24", "", Habits.none(), Optional.of(record)));
    assertTrue(err().contains("isopter amend replaces it"), err());
  }

  @Test
  void takesWhatHoldsForADepartment() throws IOException {
    Habits habits =
        Habits.read(
                """
                set\tperformer\t-\tNight nurse\tours
                set\tsetting\t-\tward\tours
                set\tsubject-system\t-\thttps://hospital.example/persons\tours
                set\thours\t-\t13:00-21:00\tours
                """)
            .orThrow();
    assertEquals(ExitStatus.OK, run("IOP R 14 @ 8:30", "", habits, Optional.empty()));
    assertTrue(out().contains("Night nurse") && out().contains("ward"), out());
    assertTrue(out().contains("https://hospital.example/persons"), out());
    assertTrue(out().contains("20:30"), out());
  }

  @Test
  void saysWhatIsWrongWithASetting() {
    String place = "set\tsetting\t-\tgarden\tours\n";
    assertEquals("line 1", Habits.read(place).faults().get(0).path());
    assertFalse(Habits.read("set\thours\t-\tlate\tours\n").isOk());
    assertFalse(Habits.read("set\tcolour\t-\tred\tours\n").isOk());
  }

  private int run(String note, String typed, Habits habits, Optional<Path> into)
      throws IOException {
    RunLog log =
        RunLog.on(
            new Streams(
                new ByteArrayInputStream(typed.getBytes(UTF_8)),
                new PrintStream(out, true, UTF_8),
                new PrintStream(err, true, UTF_8),
                true));
    new NoteTask(
            log,
            new NoteRequest(
                header(habits),
                habits,
                false,
                Optional.empty(),
                Optional.empty(),
                into,
                InputForm.YAML,
                false))
        .run(note);
    return log.status();
  }

  private static Header header(Habits habits) {
    return new HeaderRequest(Optional.of("e-1"), "p-1", Optional.of(WHEN), Optional.empty())
        .header(habits.settings());
  }

  private String out() {
    return out.toString(UTF_8);
  }

  private String err() {
    return err.toString(UTF_8);
  }
}
