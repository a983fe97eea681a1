package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.Test;

/** What a history says was deleted does not hold, and a conversion does not lose the eye. */
class DeletedAndConvertedTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  private static final String PRESSURE =
      """
      {"resourceType":"Observation","id":"a","status":"final","code":{"coding":[{"system":
      "http://snomed.info/sct","code":"41633001"}]},%s"effectiveDateTime":"2026-03-02T09:30:00Z",
      "subject":{"identifier":{"value":"p-17"}},"valueQuantity":{"value":14,"unit":"mmHg"}}
      """;

  private static final String RIGHT =
      PRESSURE.formatted(
          "\"bodySite\":{\"coding\":[{\"system\":\"http://snomed.info/sct\","
              + "\"code\":\"362502000\"}]},");

  private static final String DELETION =
      "{\"request\":{\"method\":\"DELETE\",\"url\":\"Observation/a\"}}";

  @Test
  void takesNoVersionOfWhatWasDeletedAfterIt() {
    assertEquals(List.of("retracted"), said(history(DELETION, entry(RIGHT)), Release.R4));
  }

  @Test
  void takesWhatWasMadeAnewAfterItsDeletion() {
    assertEquals(
        List.of("intraocular-pressure right 14 mmHg"),
        said(history(entry(RIGHT), DELETION), Release.R4));
  }

  @Test
  void readsALongHistoryInOnePass() {
    String[] entries = new String[8_000];
    for (int i = 0; i < entries.length; i++) {
      String id = "o" + i / 2;
      entries[i] =
          i % 2 == 0
              ? DELETION.replace("Observation/a", "Observation/" + id)
              : entry(RIGHT.replace("\"id\":\"a\"", "\"id\":\"" + id + "\""));
    }
    List<String> said =
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> said(history(entries), Release.R4));
    assertEquals(Collections.nCopies(entries.length / 2, "retracted"), said);
  }

  @Test
  void readsTheSideOfABodyStructureOfR4b() {
    String structure =
        """
        {"resourceType":"BodyStructure","id":"e","patient":{"identifier":{"value":"p-17"}},
        "location":{"coding":[{"system":"http://snomed.info/sct","code":"81745001"}]},
        "locationQualifier":[{"coding":[{"system":"http://snomed.info/sct","code":"7771000"}]}]}
        """;
    String of =
        "\"bodySite\":{\"extension\":[{\"url\":\"http://hl7.org/fhir/StructureDefinition/bodySite\","
            + "\"valueReference\":{\"reference\":\"BodyStructure/e\"}}]},";
    assertEquals(
        List.of("intraocular-pressure left 14 mmHg", "other-resource"),
        said(collection(PRESSURE.formatted(of), structure), Release.R4B));
  }

  @Test
  void readsTheSideOfABodyStructureOfR5() {
    String structure =
        """
        {"resourceType":"BodyStructure","id":"e","patient":{"identifier":{"value":"p-17"}},
        "includedStructure":[{"structure":{"coding":[{"system":"http://snomed.info/sct","code":
        "81745001"}]},"laterality":{"coding":[{"system":"http://snomed.info/sct","code":
        "24028007"}]}}]}
        """;
    String of = "\"bodyStructure\":{\"reference\":\"BodyStructure/e\"},";
    assertEquals(
        List.of("intraocular-pressure right 14 mmHg", "other-resource"),
        said(collection(PRESSURE.formatted(of), structure), Release.R5));
  }

  private static String entry(String resource) {
    return "{\"resource\":" + resource + "}";
  }

  private static String history(String... entries) {
    return bundle("history", entries);
  }

  private static String collection(String... resources) {
    return bundle(
        "collection",
        Stream.of(resources).map(DeletedAndConvertedTest::entry).toArray(String[]::new));
  }

  private static String bundle(String type, String... entries) {
    return "{\"resourceType\":\"Bundle\",\"type\":\"%s\",\"entry\":[%s]}"
        .formatted(type, String.join(",", entries));
  }

  private static List<String> said(String json, Release release) {
    return READER.read(json.getBytes(UTF_8), release).orThrow().resources().stream()
        .map(CarefulHumanTest::said)
        .toList();
  }
}
