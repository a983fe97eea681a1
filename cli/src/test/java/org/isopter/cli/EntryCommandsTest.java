package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guided entry, amendment, and what is asked about a note. */
class EntryCommandsTest {

  private static final String[] WHO = {"--subject", "p-1", "--performed", "2026-03-03T09:10:00Z"};

  /** What a clinician types for a normal examination. */
  private static final String NORMAL =
      "sc each 6/6\n\neach N5\nn\nn\neach 15/15\n\nn\nn\nn\nn\nR 14 L 15\nn\n\n";

  @TempDir Path folder;

  private String out() {
    return folder.resolve("visit").toString();
  }

  private Run examine(String typed) {
    return Run.with(
        typed, "examine", WHO[0], WHO[1], WHO[2], WHO[3], "--id", "e-1", "--output", out());
  }

  @Test
  void showsInThePagesWhatIsTyped() throws IOException {
    assertEquals(NORMAL, Files.readString(Path.of("docs", "normal-examination.txt")));
  }

  @Test
  void goesFromNothingToRecordLetterAndBundleInFewKeystrokes() {
    String command = "isopter examine --subject p-1 --output target/visit\n";
    assertEquals(110, (command + NORMAL).length());
    examine(NORMAL).ok();
    for (String end : new String[] {".yaml", ".txt", ".json"}) {
      assertTrue(Files.isRegularFile(Path.of(out() + end)), end);
    }
    assertFalse(Files.exists(Path.of(out() + ".draft")));
    Run.of("check", out() + ".yaml").ok();
  }

  @Test
  void saysWhatWasUnderstoodAndWhatIsMissing() {
    Run run = examine(NORMAL).ok();
    assertTrue(run.err().contains("recorded, each eye: Distance visual acuity: 6/6"), run.err());
    assertTrue(run.err().contains("Nothing is recorded of: pinhole; red"), run.err());
  }

  @Test
  void writesNothingOverWhatIsThere() throws IOException {
    examine(NORMAL).ok();
    String record = Files.readString(Path.of(out() + ".yaml"));
    Run again = examine("x refused\n" + "\n".repeat(13));
    assertEquals(ExitStatus.REFUSED, again.status());
    assertTrue(again.err().contains("is there already; --replace"), again.err());
    assertEquals(record, Files.readString(Path.of(out() + ".yaml")));
  }

  @Test
  void goesOnWithADraftOfThatPersonAlone() {
    examine("sc each 6/6\n");
    String[] other = {"examine", "--subject", "p-2", "--output", out()};
    Run run = Run.with("\n", other);
    assertEquals(ExitStatus.REFUSED, run.status());
    assertTrue(run.err().contains("p-1, of which there is an unfinished examination"), run.err());
    Run asked = Run.with("\n".repeat(13), "examine", "--output", out()).ok();
    assertTrue(asked.err().contains("p-1, begun 2026-03-03T09:10Z"), asked.err());
  }

  @Test
  void asksWhoIsExaminedWhereThatIsNotSaid() throws IOException {
    Run run = Run.with("\np-9\n" + NORMAL, "examine", "--output", out()).ok();
    assertTrue(run.err().contains("who: "), run.err());
    assertTrue(Files.readString(Path.of(out() + ".yaml")).contains("p-9"));
    assertEquals(ExitStatus.USAGE, Run.of("note", "IOP R 14").status());
  }

  @Test
  void addsToARecordOfThatPersonAloneAndKeepsTheTime() throws IOException {
    examine(NORMAL).ok();
    String[] other = {"note", "IOP R 24", "--subject", "p-2", "--into", out() + ".yaml"};
    Run refused = Run.of(other);
    assertEquals(ExitStatus.REFUSED, refused.status());
    assertTrue(refused.err().contains("p-2"), refused.err());
    String[] later = {
      "note", "IOP R 24", WHO[0], WHO[1], WHO[2], "2026-03-03T17:00:00Z", "--into", out() + ".yaml"
    };
    String both = Run.of(later).ok().out();
    assertTrue(both.contains("24 mmHg") && both.contains("2026-03-03T17:00:00Z"), both);
    assertTrue(both.contains("14 mmHg"), both);
  }

  @Test
  void goesOnWithADraftAfterItWasCutOff() throws IOException {
    assertEquals(ExitStatus.REFUSED, examine("sc each 6/6\n\neach N5\n").status());
    assertTrue(Files.readString(Path.of(out() + ".draft")).contains("6/6"));
    Run run = examine("n\nn" + "\n".repeat(10)).ok();
    assertTrue(run.err().contains("Going on with "), run.err());
    assertTrue(Files.readString(Path.of(out() + ".yaml")).contains("6/6"));
  }

  @Test
  void asksWhatAnUnclearAnswerMeansAndGoesBack() throws IOException {
    String typed = "6/9, 6/12\n1\nb\n6/9, 6/12\n2\n" + "\n".repeat(13);
    Run run = examine(typed).ok();
    assertTrue(run.err().contains("1 = right then left: VA R 6/9 L 6/12"), run.err());
    assertTrue(run.out().contains("6/12"), run.out());
  }

  @Test
  void recordsWhyAStepWasNotDone() throws IOException {
    examine("x refused\n" + "\n".repeat(13)).ok();
    assertTrue(Files.readString(Path.of(out() + ".yaml")).contains("refused"));
  }

  @Test
  void asksInAPipeAndTakesAnswers() throws IOException {
    Path questions = folder.resolve("questions.json");
    Path answers = folder.resolve("answers.json");
    Run asked =
        Run.of("note", "IOP 14/16", WHO[0], WHO[1], WHO[2], WHO[3], "--questions", "" + questions);
    assertEquals(ExitStatus.REFUSED, asked.status());
    assertTrue(Files.readString(questions).contains("\"IOP R 14 L 16\""));
    Files.writeString(answers, "[{\"item\": \"IOP 14/16\", \"answer\": 2}]");
    String[] args = {
      "note", "IOP 14/16", WHO[0], WHO[1], WHO[2], WHO[3], "--answers", "" + answers
    };
    String direct = Run.of("note", "IOP R 16 L 14", WHO[0], WHO[1], WHO[2], WHO[3]).ok().out();
    assertEquals(withoutId(direct), withoutId(Run.of(args).ok().out()));
    Files.writeString(answers, "[{\"item\": \"IOP 14/16\", \"answer\": 3}]");
    assertEquals(ExitStatus.REFUSED, Run.of(args).status());
  }

  private static String withoutId(String record) {
    return record.replaceAll("[0-9A-Z]{26}", "ID");
  }

  @Test
  void takesTheHabitsOfADepartment() throws IOException {
    Path habits = folder.resolve("habits.tsv");
    Files.writeString(habits, "habit\teyes\t-\tright then left\tlocal practice\n");
    Run.of("note", "IOP 14/16", WHO[0], WHO[1], "--habits", "" + habits).ok();
    Files.writeString(habits, "habit\teyes\t-\tsideways\tlocal practice\n");
    Run wrong = Run.of("note", "IOP 14/16", WHO[0], WHO[1], "--habits", "" + habits);
    assertTrue(wrong.err().contains("line 1"), wrong.err());
  }

  @Test
  void amendsARecordThatItNames() throws IOException {
    examine(NORMAL).ok();
    Run run = Run.of("amend", out() + ".yaml", "IOP R 24", "--id", "e-2").ok();
    assertTrue(run.out().contains("amends: "), run.out());
    assertTrue(run.out().contains("24"), run.out());
    assertTrue(run.err().contains("replaced: right intraocular-pressure 14 mmHg"), run.err());
    assertEquals(ExitStatus.REFUSED, Run.of("amend", out() + ".yaml", "IOP 24").status());
    Path amended = folder.resolve("amended.yaml");
    Files.writeString(amended, run.out());
    Run.of("check", amended.toString()).ok();
  }

  @Test
  void amendsNothingWhereItIsNotClearWhatIsReplaced() throws IOException {
    Path record = folder.resolve("pressures.yaml");
    Files.writeString(record, Run.of("note", "IOP R 14 GAT, L 15", WHO[0], WHO[1]).ok().out());
    Run less = Run.of("amend", record.toString(), "IOP R 24");
    assertEquals(ExitStatus.REFUSED, less.status());
    assertTrue(less.err().contains("the record holds right intraocular-pressure 14"), less.err());
    assertEquals("", less.out());
    Run more = Run.of("amend", record.toString(), "IOP L 25 GAT").ok();
    assertTrue(more.err().contains("replaced: left intraocular-pressure 15 mmHg"), more.err());
    assertFalse(more.out().contains("15 mmHg"), more.out());
    Run beside = Run.of("amend", record.toString(), "IOP R 20 NCT").ok();
    assertTrue(beside.out().contains("14 mmHg"), beside.out());
  }

  @Test
  void namesTheFileThatIsNoRecord() throws IOException {
    Path nowhere = folder.resolve("nowhere.yaml");
    Run amended = Run.of("amend", nowhere.toString(), "IOP R 24");
    assertEquals(ExitStatus.REFUSED, amended.status());
    assertTrue(amended.err().contains(nowhere + ": saw no such file"), amended.err());
    Files.writeString(nowhere, "isopter: 2\n");
    Run added = Run.of("note", "IOP R 24", WHO[0], WHO[1], "--into", nowhere.toString());
    assertTrue(added.err().contains(nowhere + ": "), added.err());
  }

  @Test
  void printsTheLetterBehindTheRecord() {
    Run run = Run.of("note", "IOP R 14", WHO[0], WHO[1], WHO[2], WHO[3], "--summary").ok();
    assertTrue(run.out().contains("14 mmHg"), run.out());
  }
}
