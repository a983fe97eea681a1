package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the commands do with inputs that are not as they should be. */
class ErrorsTest {

  private static final String NORMAL = "docs/demo/01-harbour-pilot.yaml";

  @TempDir Path folder;
  private String lines = "";

  @BeforeEach
  void makeLines() {
    lines = Run.of("to-fhir", "docs/demo").ok().out();
  }

  @Test
  void aFaultIsToldWithFileLineColumnPathSeenWantedAndHint() throws IOException {
    Path file = write("faulty.yaml", Files.readString(Path.of(NORMAL)).replace("15 mmHg", "15"));
    Run run = Run.of("check", file.toString());
    assertEquals(ExitStatus.REFUSED, run.status());
    String wanted =
        """
        %s:95:20  findings.intraocular-pressure.left.value
            saw     15
            wanted  0 to 80 mmHg
            hint    name the unit: "15 mmHg"
        """;
    assertEquals(wanted.formatted(file), run.out());
    assertEquals("isopter: 1 record: 1 refused for 1 fault\n", run.err());
  }

  @Test
  void faultsForProgramsAreAnOperationOutcomeForEachRecord() throws IOException {
    Path file = write("faulty.yaml", Files.readString(Path.of(NORMAL)).replace("15 mmHg", "15"));
    Run run = Run.of("check", "--format", "json", NORMAL, file.toString());
    assertEquals(ExitStatus.REFUSED, run.status());
    List<JsonNode> outcomes = run.out().lines().map(JsonMapper.shared()::readTree).toList();
    assertEquals(2, outcomes.size());
    assertEquals("information", outcomes.get(0).at("/issue/0/severity").stringValue());
    JsonNode issue = outcomes.get(1).at("/issue/0");
    assertEquals("OperationOutcome", outcomes.get(1).path("resourceType").stringValue());
    assertEquals("error", issue.path("severity").stringValue());
    assertEquals("invalid", issue.path("code").stringValue());
    assertEquals(
        file + ":95:20: saw 15; wanted 0 to 80 mmHg; name the unit: \"15 mmHg\"",
        issue.path("diagnostics").stringValue());
    assertEquals(
        "findings.`intraocular-pressure`.left.value", issue.at("/expression/0").stringValue());
  }

  @Test
  void oneBadLineNeverStopsTheRest() throws IOException {
    List<String> good = lines.lines().toList();
    String mixed =
        good.get(0)
            + "\n\n{\"resourceType\":\n{\"a\":1}\r\n  \n"
            + good.get(1)
            + "\n"
            + good.get(2);
    Path file = write("mixed.ndjson", mixed);
    Path report = folder.resolve("report.ndjson");
    Run run = Run.of("from-fhir", file.toString(), "--report", report.toString());
    assertEquals(ExitStatus.REFUSED, run.status());
    assertEquals(3, run.out().lines().count());
    assertTrue(run.err().contains(file + ":3:"), run.err());
    assertTrue(run.err().contains(file + ":4  resource.resourceType\n    saw     nothing"));
    assertTrue(run.err().endsWith("isopter: 3 examinations written as ndjson, 2 refused\n"));
    List<String> output = Files.readAllLines(report);
    assertEquals(2, output.stream().filter(line -> line.contains("\"error\"")).count());
    assertTrue(output.get(0).contains(file + ":3:"), output.get(0));
  }

  @Test
  void oneBadFileNeverStopsTheRest() throws IOException {
    write("a.yaml", "isopter: 1\n");
    Files.copy(Path.of(NORMAL), folder.resolve("b.yaml"));
    Run run = Run.of("to-fhir", folder.toString(), "--output", folder + "/out/");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertEquals(List.of("b.json"), names(folder.resolve("out")));
  }

  @Test
  void aMissingFileIsNamedAndTheOthersAreDone() {
    Run run = Run.of("to-fhir", "nowhere.yaml", NORMAL);
    assertEquals(ExitStatus.USAGE, run.status());
    assertEquals("isopter: nowhere.yaml: no such file or folder\n", run.err());
    assertEquals(1, run.out().lines().count());
  }

  @Test
  void whatWasNotReadIsNotSaidToBeWithoutFault() {
    Run run = Run.of("check", "nowhere.yaml");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().endsWith("isopter: 0 records: none was read\n"), run.err());
  }

  @Test
  void aFileOfAnOptionThatIsMissingIsNamedInPlainWords() {
    String[] note = {"note", "IOP R 14", "--subject", "p-1"};
    String missing = "nowhere.txt";
    for (String option : List.of("--habits", "--answers", "--into")) {
      List<String> words = new ArrayList<>(List.of(note));
      words.addAll(List.of(option, missing));
      Run run = Run.of(words.toArray(String[]::new));
      assertTrue(run.err().contains(missing + ": "), run.err());
      assertTrue(run.err().contains("no such file or folder, wanted "), run.err());
      assertFalse(run.err().contains("Exception"), run.err());
    }
  }

  @Test
  void anUnknownKindOfFileSaysWhatIsRead() throws IOException {
    Run run = Run.of("check", write("notes.txt", "hello").toString());
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("(*.yaml, *.yml, *.json, *.ndjson)"), run.err());
    assertTrue(run.err().contains("--input-format"), run.err());
  }

  @Test
  void aFileOfAnotherNameIsReadAsItsFormIsStated() throws IOException {
    Path file = write("record", Files.readString(Path.of(NORMAL)));
    Run.of("check", file.toString(), "--input-format", "yaml").ok();
  }

  @Test
  void standardInputNeedsItsFormStated() {
    Run run = Run.with("isopter: 1", "check", "-");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("--input-format"), run.err());
  }

  @Test
  void zeroBytesAreNotNothing() throws IOException {
    Path zeros = write("zeros.json", "\0\0\0");
    for (String command : List.of("from-fhir", "to-fhir")) {
      Run run = Run.of(command, zeros.toString());
      assertEquals(3, run.status(), run::err);
      assertTrue(run.err().contains(zeros + ":1:1"), run::err);
    }
  }

  @Test
  void emptyInputIsNoErrorButSaidSo() throws IOException {
    Path empty = write("empty.yaml", " \n");
    Run run = Run.of("to-fhir", empty.toString()).ok();
    assertEquals("", run.out());
    assertEquals("isopter: " + empty + " is empty: nothing to do\n", run.err());
    Files.createDirectory(folder.resolve("none"));
    Run none = Run.of("check", folder.resolve("none").toString()).ok();
    assertTrue(none.err().contains("holds none of *.yaml"), none.err());
  }

  @Test
  void anEmptyStreamGivesAnEmptyStream() throws IOException {
    Path out = folder.resolve("out.ndjson");
    Run.with("\n\n", "to-fhir", "-", "--input-format", "ndjson", "--output", out.toString()).ok();
    assertEquals("", Files.readString(out));
  }

  @Test
  void whatIsRefusedLeavesNoFileBehind() throws IOException {
    Path bad = write("bad.yaml", "isopter: 1\n");
    Path out = Files.createDirectory(folder.resolve("out")).resolve("bad.json");
    assertEquals(
        ExitStatus.REFUSED, Run.of("to-fhir", bad.toString(), "-o", out.toString()).status());
    assertEquals(List.of(), names(out.getParent()));
  }

  @Test
  void aFileThatWasThereIsReplacedOnlyByAWholeOne() throws IOException {
    Path out = write("out.json", "before");
    Path bad = write("bad.yaml", "isopter: 1\n");
    Run.of("to-fhir", bad.toString(), "-o", out.toString());
    assertEquals("before", Files.readString(out));
    Run.of("to-fhir", NORMAL, "-o", out.toString()).ok();
    assertTrue(Files.readString(out).startsWith("{"));
  }

  @Test
  void twoInputsOfOneNameAreNotWrittenOverEachOther() throws IOException {
    Files.createDirectory(folder.resolve("x"));
    Files.copy(Path.of(NORMAL), folder.resolve("x/01-harbour-pilot.yaml"));
    Run run =
        Run.of("to-fhir", NORMAL, folder + "/x/01-harbour-pilot.yaml", "-o", folder + "/out/");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertTrue(run.err().contains("was already written from another input"), run.err());
  }

  @Test
  void severalDocumentsInOneFormThatHoldsOneAreAMisuse() {
    Run run = Run.of("to-fhir", "docs/demo", "--format", "json");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("--format ndjson"), run.err());
    assertEquals("", run.out());
  }

  @Test
  void anOutputThatCannotBeWrittenStopsWithOneLine() throws IOException {
    Path file = write("file", "");
    Run run = Run.of("to-fhir", NORMAL, "-o", file + "/below.json");
    assertEquals(ExitStatus.INTERNAL, run.status());
    assertEquals(1, run.err().lines().count(), run.err());
    assertTrue(run.err().startsWith("isopter: cannot write "), run.err());
  }

  @Test
  void aMistakeInTheProgramIsOneLineWithoutItsMessage() {
    RunLog log = new RunLog(streams(), (at, issues) -> {}, (at, issues) -> {}, false);
    InputSource source =
        new InputSource("x.json", InputForm.JSON, Path.of("x.json"), () -> System.in);
    log.broken(
        new InputDocument(source, 0, new byte[0]).position(),
        new IllegalStateException("Ada Fennimore"));
    assertEquals(ExitStatus.INTERNAL, log.status());
    assertEquals(
        "isopter: x.json: internal error (IllegalStateException);"
            + " run it again with --debug to see where\n",
        words.toString(java.nio.charset.StandardCharsets.UTF_8));
  }

  private final java.io.ByteArrayOutputStream words = new java.io.ByteArrayOutputStream();

  private Streams streams() {
    java.io.PrintStream err =
        new java.io.PrintStream(words, true, java.nio.charset.StandardCharsets.UTF_8);
    return new Streams(System.in, System.out, err);
  }

  @Test
  void anUnknownFindingNamesThoseThatAreNear() {
    Run run = Run.of("catalogue", "pressure");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("there is intraocular-pressure"), run.err());
    assertFalse(Run.of("catalogue", "zzz").err().contains("there is"));
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static List<String> names(Path below) throws IOException {
    try (Stream<Path> files = Files.list(below)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
