package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Records;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo on its way through every command. */
class DemoTest {

  @TempDir Path folder;

  static List<Path> demo() {
    return Run.demo();
  }

  @ParameterizedTest
  @MethodSource("demo")
  void comesBackIdenticalFromEveryForm(Path file) {
    for (String kind : List.of("collection", "transaction", "document")) {
      Run run = Run.of("round-trip", file.toString(), "--as", kind).ok();
      String wanted =
          """
          identical  fhir-json    %1$s
          identical  fhir-xml     %1$s
          identical  record-json  %1$s
          identical  record-yaml  %1$s
          """;
      assertEquals(wanted.formatted(file), run.out());
    }
  }

  @Test
  void isFreeOfFaults() {
    Run run = Run.of("check", "docs/demo").ok();
    assertEquals("", run.out());
    assertEquals("isopter: " + demo().size() + " records: no fault found\n", run.err());
  }

  @ParameterizedTest
  @EnumSource(
      value = InputForm.class,
      names = {"JSON", "XML", "NDJSON"})
  void goesToFhirAndBackByFiles(InputForm form) throws IOException {
    boolean stream = form == InputForm.NDJSON;
    String bundles = folder.resolve(stream ? "all.ndjson" : "bundles/").toString();
    String target = stream ? bundles : bundles + "/";
    Run.of("to-fhir", "docs/demo", "--format", form.toString(), "--output", target).ok();
    String records = folder.resolve("records.ndjson").toString();
    Run.of("from-fhir", bundles, "--output", records).ok();
    assertEquals(lines("docs/demo"), Set.copyOf(Files.readAllLines(Path.of(records))));
  }

  @Test
  void goesToFhirAndBackByAPipe() {
    String file = DEMO_NORMAL;
    String bundle = Run.of("to-fhir", file).ok().out();
    String record = Run.with(bundle, "from-fhir", "-", "--input-format", "json").ok().out();
    assertEquals(bundle.replaceAll("\"[0-9a-f]{64}\"", ""), again(record));
  }

  @Test
  void isWrittenAloneAsTheFormThatItsNameAsksFor() {
    assertTrue(Run.of("to-fhir", DEMO_NORMAL).ok().out().startsWith("{\n"));
    assertTrue(Run.of("to-fhir", DEMO_NORMAL, "--format", "xml").ok().out().startsWith("<Bundle"));
  }

  @Test
  void usesMostOfTheCatalogueAndEveryReasonForAbsenceThatAnExaminerGives() {
    Set<Finding<?>> findings = new HashSet<>();
    Set<String> notations = new HashSet<>();
    Records records = new Records();
    for (Path file : demo()) {
      for (Fact<?> fact : read(records, file).facts()) {
        findings.add(fact.finding());
        fact.panel().flatMap(p -> p.notation()).map(n -> n.word()).ifPresent(notations::add);
      }
    }
    Set<Finding<?>> unused = new HashSet<>(Catalogue.standard().all());
    unused.removeAll(findings);
    assertTrue(unused.size() <= 2, "not shown by the demo: " + unused);
    assertTrue(
        notations.containsAll(
            Set.of(
                "snellen-metric",
                "snellen-imperial",
                "decimal",
                "logmar",
                "letters",
                "low-vision",
                "points",
                "jaeger",
                "m-units",
                "not-improved")),
        notations.toString());
  }

  private static final String DEMO_NORMAL = "docs/demo/01-harbour-pilot.yaml";

  /** The hash of the source differs when the source is another text. */
  private static String again(String record) {
    return Run.with(record, "to-fhir", "-", "--input-format", "yaml", "--format", "json")
        .ok()
        .out()
        .replaceAll("\"[0-9a-f]{64}\"", "");
  }

  private static Set<String> lines(String records) {
    Set<String> lines = new HashSet<>();
    Records reader = new Records();
    for (Path file : demo()) {
      lines.add(reader.write(read(reader, file), InputForm.NDJSON).strip());
    }
    assertEquals(demo().size(), lines.size(), records);
    return lines;
  }

  private static Exam read(Records records, Path file) {
    try {
      InputForm form = InputForm.ofFileName(file.toString()).orElseThrow();
      byte[] bytes = Files.readAllBytes(file);
      InputSource source =
          new InputSource(file.toString(), form, file, () -> Files.newInputStream(file));
      return records.read(new InputDocument(source, 0, bytes)).orThrow();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
