package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What goes along beside the records: from-fhir, to-fhir, from-fhir loses nothing of it. */
class CarriedTest {

  private static final Path SHAPES = Path.of("mapper/src/test/resources/foreign");
  private static final Path OWN = Path.of("docs/foreign");

  private static final Pattern LEFT_OVER = Pattern.compile(" +left over (.*)");
  private static final Pattern COMMA = Pattern.compile(", ");

  @TempDir Path folder;

  /** Records that other systems published lie beside the project and are no part of it. */
  private static List<Path> published() throws IOException {
    Path beside = Path.of(System.getProperty("foreign.records", "../shared/foreign"));
    return Files.isDirectory(beside) ? files(beside) : List.of();
  }

  @TestFactory
  Stream<DynamicTest> nothingOfWhatOthersWriteIsLost() throws IOException {
    List<Path> shapes = files(SHAPES);
    List<Path> own = files(OWN);
    assertTrue(shapes.size() > 10 && !own.isEmpty(), "the shapes are missing");
    return Stream.of(shapes, own, published()).flatMap(List::stream).map(this::law);
  }

  private DynamicTest law(Path file) {
    return DynamicTest.dynamicTest(file.toString(), () -> check(file));
  }

  private void check(Path file) throws IOException {
    Path own = Files.createTempDirectory(folder, "law");
    String first = own.resolve("first.ndjson").toString();
    String back = own.resolve("back.ndjson").toString();
    String second = own.resolve("second.ndjson").toString();
    int status = Run.of("from-fhir", file.toString(), "-o", first).status();
    assertTrue(status == ExitStatus.OK || status == ExitStatus.REFUSED, file.toString());
    Run.of("to-fhir", first, "-o", back).ok();
    Run.of("from-fhir", back, "-o", second).ok();
    assertEquals(text(first), text(second));
    assertEquals(text(first + ".carried"), text(second + ".carried"));
    if (status == ExitStatus.OK && file.toString().endsWith(".json")) {
      leaves(file, first, text(back));
    }
  }

  /**
   * The leaf diff: every value that no rule took, and every resource that was kept, is in what was
   * written back. The witness reads with a library of its own and knows none of our classes.
   */
  private static void leaves(Path file, String records, String back) throws IOException {
    Path table = Path.of(records + ".table");
    String[] output = {"--policy", "extract", "--table", table.toString()};
    Run.of(
            Stream.concat(Stream.of("from-fhir", file.toString()), Stream.of(output))
                .toArray(String[]::new))
        .ok();
    List<JsonNode> written = back.lines().map(JsonMapper.shared()::readTree).toList();
    Set<String> values = new HashSet<>();
    Set<JsonNode> wholes = new HashSet<>();
    written.forEach(bundle -> collect(bundle, values));
    written.forEach(bundle -> bundle.path("entry").forEach(e -> wholes.add(e.path("resource"))));
    Map<String, JsonNode> byName = new HashMap<>();
    resources(JsonMapper.shared().readTree(Files.readString(file, UTF_8)))
        .forEach(r -> byName.put(name(r), r));
    String name = "";
    int checked = 0;
    for (String line : Files.readAllLines(table, UTF_8)) {
      if (line.startsWith("kept  ") || line.startsWith("translated  ")) {
        name = line.substring(line.lastIndexOf("  ") + 2);
      }
      if (line.startsWith("kept  ") && line.contains(file + "  ")) {
        assertTrue(wholes.contains(byName.get(name)), file + " lost " + name);
        checked++;
      }
      for (String path : leftOver(line)) {
        String value = byName.get(name).at(path).toString();
        assertTrue(values.contains(value), file + " lost " + name + path + " " + value);
        checked++;
      }
    }
    assertTrue(checked > 0, file + " left nothing over");
  }

  private static List<String> leftOver(String line) {
    Matcher paths = LEFT_OVER.matcher(line);
    return paths.matches() ? COMMA.splitAsStream(paths.group(1)).toList() : List.of();
  }

  private static String name(JsonNode resource) {
    return resource.path("resourceType").stringValue("")
        + (resource.has("id") ? "/" + resource.path("id").stringValue() : "");
  }

  private static List<JsonNode> resources(JsonNode input) {
    List<JsonNode> all = new ArrayList<>();
    input.path("entry").forEach(entry -> all.add(entry.path("resource")));
    return all.isEmpty() ? List.of(input) : all;
  }

  /** A value that found its place taken stands as text in an extension. */
  private static void collect(JsonNode node, Set<String> values) {
    values.add(node.toString());
    node.forEach(child -> collect(child, values));
    if (node.path("url").stringValue("").equals("json")) {
      collect(JsonMapper.shared().readTree(node.path("valueString").stringValue()), values);
    }
  }

  @Test
  void whatWasKeptAndLeftOverStandsInTheBundleAgain() throws IOException {
    String record = folder.resolve("clinic.yaml").toString();
    Run.of("from-fhir", "docs/foreign/clinic.json", "-o", record).ok();
    for (String form : List.of("json", "xml", "ndjson")) {
      String bundle = Run.of("to-fhir", record, "--format", form).ok().out();
      assertTrue(bundle.contains("Oduya-Lisle") && bundle.contains("va-unknown"), bundle);
      assertTrue(bundle.contains("Patient/bram"), bundle);
    }
    String server = Run.of("to-fhir", record, "--as", "transaction").ok().out();
    assertTrue(server.contains("\"PUT\""), server);
  }

  @Test
  void xmlLosesNothingEither() throws IOException {
    String record = folder.resolve("clinic.yaml").toString();
    String again = folder.resolve("again.yaml").toString();
    String xml = folder.resolve("clinic.xml").toString();
    Run.of("from-fhir", "docs/foreign/clinic.json", "-o", record).ok();
    Run.of("to-fhir", record, "-o", xml).ok();
    Run.of("from-fhir", xml, "-o", again).ok();
    assertEquals(text(record), text(again));
    // The general library has an order of its own for members.
    assertEquals(tree(record + ".carried"), tree(again + ".carried"));
  }

  private static JsonNode tree(String file) throws IOException {
    return JsonMapper.shared().readTree(text(file));
  }

  @Test
  void recordsFindTheirOwnInAnyOrderAndThroughAPipe() throws IOException {
    String rest = folder.resolve("rest").toString();
    String records = Run.of("from-fhir", "docs/foreign/lines.ndjson", "--carried", rest).ok().out();
    List<String> lines = new ArrayList<>(records.lines().toList());
    Collections.reverse(lines);
    String[] back = {"to-fhir", "-", "--input-format", "ndjson", "--carried", rest};
    List<String> straight = Run.with(records, back).ok().out().lines().toList();
    List<String> reversed = Run.with(String.join("\n", lines), back).ok().out().lines().toList();
    assertEquals(straight.get(0), reversed.get(2));
    assertTrue(straight.get(0).contains("Encounter/1"), straight.get(0));
  }

  @Test
  void whatFindsNoRecordOrNoFactIsTold() throws IOException {
    Path records = folder.resolve("lines.ndjson");
    Run.of("from-fhir", "docs/foreign/lines.ndjson", "-o", records.toString()).ok();
    List<String> lines = Files.readAllLines(records);
    Files.writeString(records, lines.get(0).replace(",\"left\":\"14 mmHg\"", ""));
    Run run = Run.of("to-fhir", records.toString()).ok();
    assertTrue(run.err().contains("2 carried entries left out"), run.err());
    assertTrue(run.err().contains("[intraocular-pressure.left] left out"), run.err());
  }

  @Test
  void whatCameWithoutAnExaminationComesBackToo() throws IOException {
    Path in = Files.createDirectory(folder.resolve("in"));
    Files.copy(OWN.resolve("visit/patient.json"), in.resolve("patient.json"));
    Run.of("from-fhir", in.toString(), "-o", folder + "/records/").ok();
    assertTrue(Files.exists(folder.resolve("records/patient.yaml.carried")));
    Run.of("to-fhir", folder + "/records", "-o", folder + "/back/").ok();
    String back = text(folder.resolve("back/patient-rest-1.json").toString());
    assertTrue(back.contains("Oduya-Lisle"), back);
  }

  @Test
  void anOlderFileBesideTheRecordsGoesWhenNothingIsLeftOver() throws IOException {
    String record = folder.resolve("one.yaml").toString();
    Run.of("from-fhir", "docs/foreign/clinic.json", "-o", record).ok();
    Run.of("from-fhir", "docs/foreign/clinic.json", "--policy", "extract", "-o", record).ok();
    assertFalse(Files.exists(Path.of(record + ".carried")));
  }

  private static String text(String file) throws IOException {
    Path path = Path.of(file);
    return Files.exists(path) ? Files.readString(path, UTF_8) : "";
  }

  private static List<Path> files(Path below) throws IOException {
    try (Stream<Path> files = Files.walk(below)) {
      return files
          .filter(file -> file.toString().matches(".*\\.(json|ndjson|xml)"))
          .sorted()
          .toList();
    }
  }
}
