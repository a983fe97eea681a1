package org.isopter.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.task.io.LoudOutput;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What cannot be written, and what may not be written over, is said and shows in the status. */
class FailedWritesTest {

  private static final Path FULL = Path.of("/dev/full");
  private static final String RECORD = "docs/demo/01-harbour-pilot.yaml";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check docs/demo --format json",
        "check docs/demo --format sarif",
        "to-fhir docs/demo",
        "from-fhir docs/foreign/clinic.json --policy extract",
        "round-trip " + RECORD,
        "summary docs/demo",
        "compare docs/demo/04-rope-maker.yaml docs/demo/05-rope-maker-three-months-later.json",
        "catalogue",
        "completion",
        "generate --persons 3",
        "--help"
      })
  void aFullDiskBehindStandardOutputIsNoSuccess(String line) throws IOException {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    LoudOutput full = new LoudOutput(Files.newOutputStream(FULL), "standard output");
    PrintStream out = new PrintStream(new BufferedOutputStream(full, 1 << 16), false, UTF_8);
    int status =
        Main.run(
            new Streams(InputStream.nullInputStream(), out, new PrintStream(err, true, UTF_8)),
            line.split(" "));
    assertEquals(ExitStatus.INTERNAL, status, err.toString(UTF_8));
    assertTrue(
        err.toString(UTF_8).contains("cannot write standard output (no space left on device)"),
        err.toString(UTF_8));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check docs/foreign --input-format json --report /dev/full",
        "to-fhir docs/demo --output /dev/full",
        "from-fhir docs/foreign/clinic.json --policy extract --report /dev/full",
        "from-fhir docs/foreign/clinic.json --policy extract --table /dev/full"
      })
  void aFullDiskBehindAFileIsNoSuccess(String line) {
    Run run = Run.of(line.split(" "));
    assertEquals(ExitStatus.INTERNAL, run.status(), run.err());
    assertTrue(run.err().contains("cannot write /dev/full"), run.err());
  }

  @Test
  void anInputIsNeverWrittenOver() throws IOException {
    Path input = folder.resolve("one.ndjson");
    Files.writeString(input, Run.of("from-fhir", "docs/foreign/lines.ndjson").out());
    String before = Files.readString(input);
    for (String option : new String[] {"--output", "--report"}) {
      Run run = Run.of("to-fhir", input.toString(), option, folder + "/./one.ndjson");
      assertEquals(ExitStatus.USAGE, run.status(), run.err());
      assertTrue(run.err().contains("never written over"), run.err());
      assertEquals(before, Files.readString(input));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "from-fhir docs/foreign/clinic.json --output ONE --table ONE",
        "from-fhir docs/foreign/clinic.json --output ONE --report ONE",
        "from-fhir docs/foreign/clinic.json --output ONE --carried ONE",
        "from-fhir docs/foreign/clinic.json --table ONE --report ONE",
        "from-fhir docs/foreign/clinic.json --habits ONE --output ONE",
        "to-fhir docs/demo/01-harbour-pilot.yaml --carried ONE --output ONE",
        "check docs/demo/01-harbour-pilot.yaml --suppress ONE --report ONE",
        "pool docs/demo --key-file ONE --report ONE --output NEW",
        "pool docs/demo --key-file ONE --leftover ONE --output NEW"
      })
  void noFileIsWrittenForTwoOptions(String line) throws IOException {
    Path one = Files.writeString(folder.resolve("one.yaml"), "# what stood there\n");
    String where = line.replace("ONE", one.toString()).replace("NEW", folder + "/new");
    Run run = Run.of(where.split(" "));
    assertEquals(ExitStatus.USAGE, run.status(), run.err());
    assertEquals("# what stood there\n", Files.readString(one));
  }

  @Test
  void eachOptionMayHaveAFileOfItsOwn() {
    Run.of(
            "from-fhir",
            "docs/foreign/clinic.json",
            "--output",
            folder + "/out.yaml",
            "--table",
            folder + "/table.txt",
            "--report",
            folder + "/report.ndjson",
            "--carried",
            folder + "/rest")
        .ok();
  }

  @Test
  void anInputInTheFolderOfTheOutputIsKept() throws IOException {
    Path input = folder.resolve("one.json");
    Files.copy(Path.of("docs/demo/05-rope-maker-three-months-later.json"), input);
    byte[] before = Files.readAllBytes(input);
    Run run = Run.of("to-fhir", input.toString(), "--output", folder + "/");
    assertEquals(ExitStatus.REFUSED, run.status(), run.err());
    assertTrue(run.err().contains("is an input"), run.err());
    assertEquals(new String(before, UTF_8), Files.readString(input));
  }

  @Test
  void aNoteInAnotherEncodingIsAFaultOfTheNote() throws IOException {
    Path note = folder.resolve("note.txt");
    Files.write(note, "IOP R 14 L 15 à".getBytes(ISO_8859_1));
    Run run =
        Run.of(
            "note",
            note.toString(),
            "--id",
            "n",
            "--subject",
            "p",
            "--performed",
            "2026-03-03T09:10:00Z");
    assertEquals(ExitStatus.REFUSED, run.status(), run.err());
    assertTrue(run.err().contains("saw bytes that are no UTF-8, wanted"), run.err());
    assertFalse(run.err().contains("internal"), run.err());
  }

  @Test
  void controlCharactersOfAnInputAreShownAndNotObeyed() throws IOException {
    Path record = folder.resolve("a\u001b[2Jb.yaml");
    Files.writeString(record, "id: [\n");
    Run run = Run.of("check", record.toString());
    assertFalse((run.out() + run.err()).contains("\u001b"), run.out());
    assertTrue(run.out().contains("a<U+001B>[2Jb.yaml"), run.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "from-fhir IN.fhir.json --table -",
        "from-fhir IN.fhir.json --policy \u001b",
        "from-fhir IN.fhir.json --zone \u001b",
        "from-fhir IN.fhir.json --habits \u001b",
        "check IN.record.json --format json",
        "check IN.record.json --format sarif",
        "check IN.record.json",
        "calculate \u001b",
        "\u001b"
      })
  void controlCharactersNeverReachTheTerminal(String line) throws IOException {
    String hidden = "\u001b[31m\u0007\u009b\u202e";
    String coded = hidden.replace("\u001b", "\\u001b").replace("\u0007", "\\u0007");
    Files.writeString(
        folder.resolve("IN.fhir.json"),
        """
        {"resourceType": "Observation", "id": "%1$s", "status": "final", "code": {"text": "%1$s"}}
        """
            .formatted(coded));
    Files.writeString(
        folder.resolve("IN.record.json"), "{\"isopter\": 1, \"%s\": 1}".formatted(coded));
    Run run = Run.of(line.replace("IN.", folder + "/IN.").split(" ", -1));
    hidden
        .replace("[31m", "")
        .chars()
        .forEach(sign -> assertEquals(-1, (run.out() + run.err()).indexOf(sign), run::toString));
    assertFalse(run.status() == ExitStatus.OK, run::toString);
  }

  @ParameterizedTest
  @ValueSource(strings = {"from-fhir", "validate"})
  void whatStandsBehindTooManyBlanksIsNotSaidToBeNothing(String command) throws IOException {
    Path input = folder.resolve("blanks.json");
    byte[] blanks = " ".repeat(1 << 20).getBytes(UTF_8);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(input))) {
      for (int i = 0; i < 65; i++) {
        out.write(blanks);
      }
      out.write("{\"resourceType\": \"Patient\"}".getBytes(UTF_8));
    }
    Run run = Run.of(command, input.toString());
    assertEquals(ExitStatus.REFUSED, run.status(), run.err());
    Files.writeString(input, "  \n ");
    assertTrue(Run.of(command, input.toString()).ok().err().contains("is empty"));
  }

  /** In a locale of ASCII, Java puts this sign in the place of each letter beyond it. */
  @Test
  void aPersonWhoseLettersWereNotReadIsNoPerson() {
    String[] note = {"note", "VA R 6/6", "--id", "n", "--subject", "M\ufffdller"};
    Run run = Run.of(note);
    assertEquals(ExitStatus.USAGE, run.status(), run.err());
    assertTrue(run.err().contains("LC_ALL=C.UTF-8"), run.err());
    note[5] = "Müller";
    Run.of(note).ok();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--id", "--subject"})
  void aNameThatCannotStandInARecordIsAWrongCommandLine(String option) {
    String other = option.equals("--id") ? "--subject" : "--id";
    Run run = Run.of("note", "VA R 6/6", option, "a\u001bb", other, "p");
    assertEquals(ExitStatus.USAGE, run.status(), run.err());
    assertTrue(run.err().contains(option + ": "), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"catalogue", "generate --persons 1", "completion"})
  void everyCommandTakesDebug(String line) {
    Run.of((line + " --debug").split(" ")).ok();
  }
}
