package org.isopter.mapper.fhir;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.isopter.mapper.Goldens;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.finding.Finding;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * One reviewed Observation per finding, from a record written by hand; they are also the examples
 * of the FHIR package, so that each file is one truth in one place.
 */
class ExamplesTest {

  private static final Path FOLDER =
      Path.of("../profiles/src/main/resources/org/isopter/profiles/package/example");
  private static final JsonMapper MAPPER = new JsonMapper();
  private static final Exam EXAM = exam();

  @Test
  void everyFindingHasAnExample() {
    List<String> written =
        EXAM.facts().stream().map(fact -> fact.finding().id()).distinct().sorted().toList();
    List<String> known = Catalogue.standard().all().stream().map(Finding::id).sorted().toList();
    assertEquals(known, written);
  }

  @TestFactory
  Stream<DynamicTest> observationsAreAsReviewed() {
    return observations().stream()
        .map(
            observation ->
                DynamicTest.dynamicTest(
                    name(observation), () -> check("Observation-", observation)));
  }

  @Test
  void bundleIsAsReviewed() {
    ObjectNode bundle = (ObjectNode) MAPPER.readTree(json());
    ObjectNode named = MAPPER.createObjectNode();
    named.put("resourceType", "Bundle").put("id", "example");
    bundle.properties().forEach(property -> named.set(property.getKey(), property.getValue()));
    check("Bundle-", named);
  }

  private static List<ObjectNode> observations() {
    return MAPPER
        .readTree(json())
        .path("entry")
        .valueStream()
        .map(entry -> (ObjectNode) entry.path("resource"))
        .filter(resource -> resource.path("resourceType").asString().equals("Observation"))
        .filter(resource -> !resource.has("hasMember"))
        .map(observation -> observation.put("id", name(observation)))
        .toList();
  }

  private static String name(JsonNode observation) {
    String profile = observation.path("meta").path("profile").path(0).asString();
    String finding = profile.substring(profile.lastIndexOf('/') + 1);
    return finding + (observation.has("dataAbsentReason") ? "-absent" : "");
  }

  private static void check(String prefix, ObjectNode resource) {
    String text = MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(resource) + "\n";
    Goldens.check(FOLDER.resolve(prefix + resource.path("id").asString() + ".json"), text);
  }

  private static String json() {
    return FhirWriter.of(BundleKind.COLLECTION).write(EXAM);
  }

  private static Exam exam() {
    try (InputStream file =
        Objects.requireNonNull(ExamplesTest.class.getResourceAsStream("/golden/examples.yaml"))) {
      String text = new String(file.readAllBytes(), UTF_8);
      return new RecordReader(Catalogue.standard()).read(text, RecordFormat.YAML).orThrow();
    } catch (IOException unreadable) {
      throw new java.io.UncheckedIOException(unreadable);
    }
  }
}
