package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Outcome;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What a careful human takes from each file that others published: eye, value and notation, or the
 * reason why not. The rows were written from reading the files, not from running the reader.
 */
class CarefulHumanTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  /** File, then what is taken from it, or the word of the reason why it is kept. */
  private static final List<List<String>> ALONE =
      List.of(
          List.of("au-digital-health/bodystructure-eye", "other-resource"),
          List.of("au-digital-health/bodystructure-eye-02", "other-resource"),
          List.of("au-digital-health/bodystructure-eye-03", "other-resource"),
          List.of("au-digital-health/observation-visualacuity-01", "distance-acuity both 6/12"),
          List.of(
              "au-digital-health/observation-visualacuity-02",
              "distance-acuity left 0.3 logMAR correction=corrected"),
          List.of("au-digital-health/observation-visualacuity-03", "distance-acuity left CF 4 m"),
          List.of(
              "nictiz-zib2020/nl-core-VisualAcuity-01",
              "distance-acuity left 0.8 decimal chart=snellen correction=trial-lenses distance=5 m"),
          List.of(
              "nictiz-zib2020/nl-core-Refraction-01",
              "refraction right axis=90 deg cylinder=-0.75 D sphere=+1.00 D vertical-base=up"
                  + " vertical-prism=2.00 PD by objective"),
          List.of(
              "synthea/observation-eye-0", "distance-acuity left 0.3 logMAR correction=unaided"),
          List.of(
              "synthea/observation-eye-1", "distance-acuity right 0.3 logMAR correction=unaided"),
          List.of("synthea/observation-eye-2", "intraocular-pressure left 17 mmHg"),
          List.of("fhir-r4-spec/claim-example-vision", "other-resource"),
          List.of("fhir-r4-spec/claim-example-vision-glasses", "other-resource"),
          List.of("fhir-r4-spec/claim-example-vision-glasses-3tier", "other-resource"),
          List.of("fhir-r4-spec/claimresponse-example-vision-3tier", "other-resource"),
          List.of("fhir-r4-spec/codesystem-vision-base-codes", "other-resource"),
          List.of("fhir-r4-spec/codesystem-vision-eye-codes", "other-resource"),
          List.of("fhir-r4-spec/devicerequest-left-lens", "other-resource"),
          List.of("fhir-r4-spec/devicerequest-right-lens", "other-resource"),
          List.of("fhir-r4-spec/observation-example-abdo-tender", "unknown-code"),
          List.of("fhir-r4-spec/observation-example-bloodpressure-cancel", "retracted"),
          List.of("fhir-r4-spec/observation-example-bloodpressure-dar", "unknown-code"),
          List.of("fhir-r4-spec/observation-example-bmd", "unknown-code"),
          List.of("fhir-r4-spec/observation-example-eye-color", "unknown-code"),
          List.of("fhir-r4-spec/observation-example-glasgow", "unknown-code"),
          List.of("fhir-r4-spec/observation-example-unsat", "retracted"),
          List.of("fhir-r4-spec/observation-example-vitals-panel", "unknown-code"),
          List.of("fhir-r4-spec/visionprescription-example", "order"),
          List.of("fhir-r4-spec/visionprescription-example-1", "order"));

  /** Resource of one folder that is read together, then what is taken from it or why not. */
  private static final List<List<String>> TOGETHER =
      List.of(
          List.of("BodyStructure/bodystructure-left-eye", "other-resource"),
          List.of("BodyStructure/bodystructure-right-eye", "other-resource"),
          List.of("DiagnosticReport/diagnostic-report-visual-field-test-re-0", "other-resource"),
          List.of("Media/visual-field-re-0", "other-resource"),
          List.of(
              "Observation/observation-iop-goldman-re-0",
              "intraocular-pressure right 25.4 mmHg by goldmann"),
          List.of(
              "Observation/observation-iop-goldman-le-0",
              "intraocular-pressure left 26.0 mmHg by goldmann"),
          List.of(
              "Observation/observation-refraction-re-0",
              "refraction right axis=60 deg cylinder=-2.5 D sphere=-2.5 D"),
          List.of(
              "Observation/va-snellen-distance-re-0",
              "distance-acuity right 0.544 logMAR chart=snellen"),
          List.of(
              "Observation/va-snellen-distance-le-0",
              "distance-acuity left 0.60 logMAR chart=snellen"),
          List.of(
              "Observation/va-snellen-corrected-re-0",
              "distance-acuity right 0.30 logMAR chart=snellen correction=corrected"),
          List.of(
              "Observation/vf-false-positives-re-0", "visual-field-false-positives right 2/100"),
          List.of("Observation/vf-fixation-loss-re-0", "visual-field-fixation-losses right 1/15"),
          List.of(
              "Observation/vf-mean-deviation-re-0", "visual-field-mean-deviation right 4.56 dB"),
          List.of(
              "Observation/vf-pattern-standard-deviation-re-0",
              "visual-field-pattern-standard-deviation right 4.5 dB"),
          List.of("Observation/vf-test-duration-re-0", "visual-field-test-duration right 310 s"),
          List.of("Patient/ophthal-patient-example-0", "other-resource"),
          List.of("Practitioner/ophthal-practitioner-example-0", "other-resource"),
          List.of("Procedure/perimetry-24-2-perimetry-test", "other-resource"));

  @TestFactory
  Stream<DynamicTest> takesFromEachFileWhatAHumanTakes() {
    Path folder = folder();
    return ALONE.stream()
        .filter(row -> folder.resolve(row.get(0) + ".json").toFile().exists())
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.get(0),
                    () -> {
                      String json = Foreign.text(folder.resolve(row.get(0) + ".json"));
                      Reading reading = READER.read(json).orThrow();
                      assertEquals(row.get(1), said(reading.resources().get(0)));
                    }));
  }

  @Test
  void takesFromTheXmlOfAFileWhatItTakesFromItsJson() {
    Path folder = folder();
    List<String> names =
        List.of(
            "au-digital-health/observation-visualacuity-03",
            "nictiz-zib2020/nl-core-Refraction-01");
    for (String name : names) {
      byte[] xml =
          Foreign.text(folder.resolve(name + ".xml"))
              .getBytes(java.nio.charset.StandardCharsets.UTF_8);
      Reading reading = READER.read(xml, Release.R4).orThrow();
      String wanted =
          ALONE.stream().filter(row -> row.get(0).equals(name)).findFirst().orElseThrow().get(1);
      assertEquals(wanted, said(reading.resources().get(0)));
    }
  }

  @Test
  void takesFromAFolderWhatAHumanTakesWhoSeesItWhole() {
    Path folder = folder().resolve("hl7-eyecare-ig");
    List<Raw> documents =
        Foreign.jsonFiles().stream()
            .filter(file -> file.startsWith(folder))
            .map(file -> new RawJson(Limits.USUAL).read(Foreign.text(file)).orThrow())
            .toList();
    Map<String, String> wanted = new TreeMap<>();
    TOGETHER.forEach(row -> wanted.put(row.get(0), row.get(1)));
    Map<String, String> seen = new TreeMap<>();
    READER.readTogether(documents).resources().forEach(r -> seen.put(r.name(), said(r)));
    assertEquals(lines(wanted), lines(seen));
  }

  @Test
  void keepsWhatNamesItsEyeOnlyInAnotherFile() {
    Path file = folder().resolve("hl7-eyecare-ig/observation-iop-0.json");
    assertEquals("no-side", said(READER.read(Foreign.text(file)).orThrow().resources().get(0)));
  }

  @Test
  void readsTheSyntheticLinesCompletely() {
    Path file = folder().resolve("synthea/Observation-eye.ndjson");
    List<String> lines = Foreign.lines(file);
    List<Raw> documents =
        lines.stream().map(line -> new RawJson(Limits.USUAL).read(line).orThrow()).toList();
    Reading reading = READER.readTogether(documents);
    assertEquals(lines.size(), reading.count("translated"));
    long wrong =
        reading.resources().stream()
            .filter(r -> ((Treated.Translated) r.treated()).rules().contains("code-wrong-system"))
            .count();
    assertEquals(150, wrong);
    assertEquals(300, reading.exams().stream().mapToInt(exam -> exam.exam().facts().size()).sum());
  }

  /** Test suites of another standard are no FHIR resources and come back as they are. */
  @Test
  void keepsWhatIsNoResource() {
    folder();
    for (Path file : Foreign.jsonFiles()) {
      if (file.toString().contains("sql-on-fhir")) {
        assertEquals(
            "no-resource", said(READER.read(Foreign.text(file)).orThrow().resources().get(0)));
      }
    }
  }

  private static Path folder() {
    Optional<Path> folder = Foreign.folder();
    assumeTrue(folder.isPresent(), "the folder of published records is not here");
    return folder.orElseThrow();
  }

  private static String lines(Map<String, String> map) {
    StringBuilder lines = new StringBuilder();
    map.forEach((key, value) -> lines.append(key).append(": ").append(value).append('\n'));
    return lines.toString();
  }

  static String said(ReadResource read) {
    if (read.treated() instanceof Treated.Kept kept) {
      return kept.reasons().get(0).why().word();
    }
    List<String> facts = new ArrayList<>();
    read.treated().facts().forEach(fact -> facts.add(said(fact)));
    return String.join("; ", facts);
  }

  private static String said(Fact<?> fact) {
    StringBuilder text = new StringBuilder(fact.finding().id() + " " + fact.site().word());
    fact.panel().ifPresent(panel -> said(fact, panel, text));
    fact.outcome().ifAbsent().ifPresent(reason -> text.append(" absent ").append(reason.word()));
    fact.method().ifPresent(method -> text.append(" by ").append(method.word()));
    return text.toString();
  }

  private static void said(Fact<?> fact, EncodedValue panel, StringBuilder text) {
    if (panel.notation().isPresent()) {
      text.append(' ').append(fact.finding().layout().writeChoice(panel));
    } else {
      panel.value().ifPresent(value -> text.append(' ').append(DatumTexts.of(value)));
    }
    List<String> own = List.of("shown-at", "letters");
    new TreeMap<>(panel.parts())
        .forEach(
            (key, part) -> {
              if (!own.contains(key)) {
                text.append(' ').append(key).append('=').append(said(part));
              }
            });
  }

  private static String said(Outcome<org.isopter.model.finding.Datum> part) {
    return part.fold(DatumTexts::of, reason -> "absent " + reason.word());
  }
}
