package org.isopter.cli;

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

/** What notes, amendments and guided entry answer to a slip: where, what was seen, what to do. */
class EntryMessagesTest {

  @TempDir Path folder;

  private String record = "";

  @BeforeEach
  void writeRecord() throws IOException {
    record = folder.resolve("record.yaml").toString();
    String[] note = {
      "note", "IOP R 14 GAT L 16 GAT", "--subject", "p-1", "--id", "r-1", "--performed"
    };
    Run made = Run.of(with(note, "2026-03-03T09:10:00Z")).ok();
    Files.writeString(Path.of(record), made.out());
  }

  private static String[] with(String[] args, String... more) {
    String[] all = new String[args.length + more.length];
    System.arraycopy(args, 0, all, 0, args.length);
    System.arraycopy(more, 0, all, args.length, more.length);
    return all;
  }

  private static void refused(int status, String words, String... args) {
    Run run = Run.of(args);
    assertEquals(status, run.status(), run.err());
    assertTrue(run.err().contains(words), run.err());
    assertFalse(run.err().contains("java."), run.err());
    assertEquals("", run.out());
  }

  @Test
  void nameNoClassForATimeOrANumber() {
    String time = "is no day and time with its offset, such as 2026-03-03T09:10:00+01:00";
    for (String wrong : new String[] {"yesterday", "2026-03-03", "2026-13-45T00:00:00Z"}) {
      refused(ExitStatus.USAGE, time, "note", "IOP R 14", "--performed", wrong);
      refused(ExitStatus.USAGE, time, "from-fhir", "x.json", "--performed", wrong);
    }
    refused(ExitStatus.USAGE, "'many' is no whole number", "generate", "--persons", "many");
  }

  @Test
  void sayWhyNothingWasAmended() {
    String status = "wanted what the record does not say already";
    refused(ExitStatus.REFUSED, status, "amend", record, "IOP L 16 GAT");
    refused(ExitStatus.REFUSED, "TEXT: saw nothing", "amend", record, "");
    String same = "--id: saw r-1, the id of the record that is amended";
    refused(ExitStatus.USAGE, same, "amend", record, "IOP R 24 GAT", "--id", "r-1");
    refused(ExitStatus.REFUSED, "saw a folder", "amend", folder + "", "IOP R 24 GAT");
    String out = Run.of("amend", record, "IOP L 16 GAT; RAPD L").ok().out();
    assertTrue(out.contains("afferent-defect"), out);
  }

  @Test
  void addToARecordWithoutNamingThePersonAgain() {
    String[] into = {"--into", record, "--performed", "2026-03-03T09:10:00Z"};
    String both = Run.of(with(new String[] {"note", "RAPD L"}, into)).ok().out();
    assertTrue(both.contains("r-1") && both.contains("afferent-defect"), both);
    String[] again = {"note", "IOP R 14 GAT"};
    refused(ExitStatus.REFUSED, "does not say already", with(again, into));
    String[] other = {"note", "IOP R 24 GAT"};
    String held =
        "saw right intraocular-pressure 24 mmHg (method goldmann), wanted what does not"
            + " contradict the record, which holds right intraocular-pressure 14 mmHg";
    refused(ExitStatus.REFUSED, held, with(other, into));
    for (String[] kept : new String[][] {{"--id", "r-2"}, {"--performer", "Night nurse"}}) {
      refused(ExitStatus.USAGE, kept[0] + ": saw one beside --into", with(with(again, into), kept));
    }
    refused(ExitStatus.USAGE, "saw no such file", "note", "RAPD L", "--into", record + "x");
  }

  @Test
  void nameTheAnswerThatFitsNoQuestion() throws IOException {
    Path answers = folder.resolve("answers.json");
    String[] note = {"note", "IOP 14/16", "--subject", "p-1", "--answers", answers.toString()};
    String[][] wrong = {
      {"[{\"item\":\"IOP 14/16\",\"answer\":3}]", "answer 1: saw 3, wanted a number from 1 to 2"},
      {"[{\"item\":\"IOP 14/17\",\"answer\":1}]", "wanted an item that the note asks about: \"IOP"},
      {"[{\"item\":\"IOP 14/16\",\"answer\":1.9}]", "saw {\"item\":\"IOP 14/16\",\"answer\":1.9}"},
      {"[3]", "answer 1: saw 3, wanted {\"item\""},
      {"{\"item\":\"IOP 14/16\",\"answer\":1}", "saw no list"},
      {"3", "saw no list"},
      {"[", "saw no JSON"},
    };
    for (String[] row : wrong) {
      Files.writeString(answers, row[0]);
      refused(ExitStatus.REFUSED, row[1], note);
    }
    String one = "{\"item\":\"IOP 14/16\",\"answer\":1}";
    Files.writeString(answers, "[" + one + "," + one + "]");
    refused(ExitStatus.REFUSED, "answer 2: saw \"IOP 14/16\", wanted no answer", note);
  }

  @Test
  void nameTheFileOfWhatIsTypedAndOfTheDraft() throws IOException {
    String name = folder.resolve("v").toString();
    String[] examine = {"examine", "--subject", "p-1", "--output", name};
    String missing = folder.resolve("nowhere") + ": saw no such file";
    refused(ExitStatus.REFUSED, missing, with(examine, "--typed", folder.resolve("nowhere") + ""));
    Path draft = Path.of(name + ".draft");
    Files.write(draft, new byte[] {'s', (byte) 0xff, 9});
    refused(ExitStatus.REFUSED, draft + ": saw bytes that are no UTF-8", examine);
    String head = "subject\tp-1\nrecord\tx-1\nperformed\t2026-03-03T09:10:00Z\n";
    Files.writeString(draft, head + "acuity\tVA 6/6 OU\n");
    refused(ExitStatus.REFUSED, "take the line out of the draft", examine);
    Files.writeString(draft, head + "acuity\tVA each 6/6\n");
    refused(ExitStatus.REFUSED, "--id: saw x-2, wanted x-1", with(examine, "--id", "x-2"));
    String later = "2026-03-04T09:10:00Z";
    refused(ExitStatus.REFUSED, "--performed: saw 2026-03-04", with(examine, "--performed", later));
  }

  @Test
  void nameTheStepThatAnAnswerContradicts() {
    String typed = "each 6/6\n\n\n\nRAPD R\nb\nb\nRAPD L\n";
    String name = folder.resolve("v").toString();
    Run run = Run.with(typed, "examine", "--subject", "p-1", "--output", name);
    assertTrue(run.err().contains("right under afferent defect"), run.err());
    assertFalse(run.err().contains("line 2"), run.err());
  }
}
