package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What from-fhir does with what other systems send. */
class FromFhirTest {

  private static final String CLINIC = "docs/foreign/clinic.json";
  private static final String LINES = "docs/foreign/lines.ndjson";

  @TempDir Path folder;

  @Test
  void faithfulWithoutAPlaceForTheRestSaysSoByItsStatus() {
    Run run = Run.of("from-fhir", CLINIC);
    assertEquals(ExitStatus.LEFT_OVER, run.status());
    assertTrue(run.out().contains("right: { value: 6/9-2"), run.out());
    assertTrue(run.err().contains("what was left over is in no file: keep it with"), run.err());
    Run.of("from-fhir", CLINIC, "--carried", folder.resolve("rest").toString()).ok();
    Run.of("from-fhir", CLINIC, "--policy", "extract").ok();
  }

  @Test
  void strictRefusesWhatLeavesSomethingOverAndSaysWhat() {
    Run run = Run.of("from-fhir", CLINIC, "--policy", "strict");
    assertEquals(ExitStatus.LEFT_OVER, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("Observation/va-right: /code/coding/0/display"), run.err());
    assertTrue(run.err().contains("Observation/va-unknown: kept, no-side"), run.err());
  }

  @Test
  void strictTakesWhatToFhirWrites() throws IOException {
    Path bundle = folder.resolve("bundle.json");
    Run.of("to-fhir", "docs/demo/02-net-mender.yaml", "-o", bundle.toString()).ok();
    Run.of("from-fhir", "--policy", "strict", bundle.toString()).ok();
  }

  @Test
  void ofLinesStrictRefusesThoseThatLeaveSomethingOver() throws IOException {
    String good = Run.of("to-fhir", "docs/demo/02-net-mender.yaml", "--format", "ndjson").out();
    Path mixed = write("mixed.ndjson", good + Files.readString(Path.of(LINES)));
    Run run = Run.of("from-fhir", "--policy", "strict", mixed.toString());
    assertEquals(ExitStatus.LEFT_OVER, run.status());
    assertEquals(1, run.out().lines().count());
    assertTrue(run.err().contains(mixed + ":2\n"), run.err());
  }

  @Test
  void filesOfOneFolderAreReadTogether() {
    String record = Run.of("from-fhir", "docs/foreign/visit", "--policy", "extract").ok().out();
    assertEquals(1, record.lines().count(), record);
    assertTrue(record.contains("\"right\":\"6/9-2\"") && record.contains("14 mmHg"), record);
    Run alone =
        Run.of("from-fhir", "docs/foreign/visit", "--policy", "extract", "--together", "none").ok();
    assertEquals("", alone.out());
    assertTrue(alone.err().contains("no-side"), alone.err());
  }

  @Test
  void aBundleStandsForItselfUnlessAllIsReadTogether() throws IOException {
    String one = Files.readString(Path.of("docs/foreign/visit/pressure.json"));
    String eye = Files.readString(Path.of("docs/foreign/visit/right-eye.json"));
    write("one.json", bundle(one));
    write("two.json", bundle(eye));
    String all = folder.toString();
    assertEquals("", Run.of("from-fhir", all, "--policy", "extract").ok().out());
    Run together = Run.of("from-fhir", all, "--policy", "extract", "--together", "all").ok();
    assertEquals(1, together.out().lines().count());
  }

  @ParameterizedTest
  @ValueSource(strings = {"docs/foreign/vis*/*.json", "docs/foreign/visit/{a,p,r}*.json"})
  void aPatternNamesFiles(String pattern) {
    assertEquals(
        Run.of("from-fhir", "docs/foreign/visit", "--policy", "extract").ok().out(),
        Run.of("from-fhir", pattern, "--policy", "extract").ok().out());
  }

  @Test
  void aPatternThatNamesNothingIsMissing() {
    Run run = Run.of("from-fhir", "docs/foreign/*.none");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("docs/foreign/*.none: no file has such a name"), run.err());
  }

  @Test
  void compressedFilesAreReadByEveryCommand() throws IOException {
    Path lines = gzip(LINES, "lines.ndjson.gz");
    assertEquals(
        Run.of("from-fhir", LINES, "--policy", "extract").ok().out(),
        Run.of("from-fhir", lines.toString(), "--policy", "extract").ok().out());
    Path record = gzip("docs/demo/02-net-mender.yaml", "net.yaml.gz");
    Run.of("check", record.toString()).ok();
    Run.of("to-fhir", record.toString(), "-o", folder + "/out/").ok();
    assertTrue(Files.exists(folder.resolve("out/net.json")));
  }

  @Test
  void otherReleasesAndXmlGiveTheSameRecord() throws IOException {
    String plain = Files.readString(Path.of(LINES)).lines().findFirst().orElseThrow();
    String json = write("one.json", plain).toString();
    String record = Run.of("from-fhir", json, "--policy", "extract").ok().out();
    for (String release : List.of("R4B", "R5", "r5")) {
      Run run = Run.of("from-fhir", json, "--policy", "extract", "--release", release);
      assertEquals(record, run.ok().out(), release);
    }
    assertEquals(ExitStatus.USAGE, Run.of("from-fhir", json, "--release", "R3").status());
  }

  @Test
  void aDayBeginsInTheZoneThatIsNamed() throws IOException {
    String day = Files.readString(Path.of(LINES)).replace("T09:30:00Z", "");
    String file = write("days.ndjson", day).toString();
    Run run = Run.of("from-fhir", file, "--policy", "extract", "--zone", "Europe/Paris").ok();
    assertTrue(run.out().contains("2026-06-09T00:00:00+02:00"), run.out());
    Run wrong = Run.of("from-fhir", file, "--zone", "Mars/North");
    assertEquals(ExitStatus.USAGE, wrong.status());
    assertTrue(wrong.err().contains("'Mars/North' is no time zone"), wrong.err());
  }

  @ParameterizedTest
  @CsvSource({"30m,1", "PT1H,1", "90s,2"})
  void observationsWithinTheWindowAreOneExamination(String window, int records) throws IOException {
    String first = Files.readString(Path.of("docs/foreign/visit/pressure.json"));
    write("eye.json", Files.readString(Path.of("docs/foreign/visit/right-eye.json")));
    write("one.json", first);
    write(
        "two.json",
        first.replace("10:20", "10:35").replace("\"pressure\"", "\"later\"").replace("14", "16"));
    Run run =
        Run.of("from-fhir", folder.toString(), "--policy", "extract", "--window", window).ok();
    assertEquals(records, run.out().lines().count(), run.out());
  }

  @Test
  void badInputIsToldWithLineAndColumnAndNeverStopsTheRest() throws IOException {
    String good = Files.readString(Path.of(LINES));
    Path file = write("bad.ndjson", "{\"resourceType\":\"Observation\", Fennimore}\n[]\n" + good);
    Run run = Run.of("from-fhir", file.toString(), "--policy", "extract");
    assertEquals(ExitStatus.REFUSED, run.status());
    assertEquals(3, run.out().lines().count());
    assertTrue(run.err().contains(file + ":1:32\n"), run.err());
    assertTrue(run.err().contains(file + ":2\n    saw     a list"), run.err());
    assertFalse(run.err().contains("Fennimore"), run.err());
    assertTrue(run.err().endsWith("3 examinations written as ndjson, 2 refused\n"), run.err());
  }

  @Test
  void aBundleOfOursThatWasChangedIsReadAsThatOfAnother() throws IOException {
    Path bundle = folder.resolve("bundle.json");
    Run.of("to-fhir", "docs/demo/02-net-mender.yaml", "-o", bundle.toString()).ok();
    String changed = Files.readString(bundle).replaceFirst("\"final\"", "\"entered-in-error\"");
    Files.writeString(bundle, changed);
    Run run = Run.of("from-fhir", bundle.toString(), "--policy", "extract").ok();
    assertTrue(run.err().contains("it is not as to-fhir writes it"), run.err());
  }

  @Test
  void theNameOfTheOutputTellsItsForm() throws IOException {
    Path json = folder.resolve("one.json");
    Run.of("from-fhir", CLINIC, "-o", json.toString()).ok();
    assertTrue(Files.readString(json).startsWith("{\n"), Files.readString(json));
    Run many = Run.of("from-fhir", LINES, "-o", folder + "/many.yaml");
    assertEquals(ExitStatus.USAGE, many.status());
    assertTrue(many.err().contains("there are 3"), many.err());
    assertEquals(List.of("one.json", "one.json.carried"), names(folder));
  }

  private static String bundle(String resource) {
    return "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":"
        + resource
        + "}]}";
  }

  private Path gzip(String source, String name) throws IOException {
    Path file = folder.resolve(name);
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
      Files.copy(Path.of(source), out);
    }
    return file;
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
