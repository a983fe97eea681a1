package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.table.PooledExam;
import org.junit.jupiter.api.Test;

/**
 * Persons of whom only an address is known are one within what is read together, and no further.
 */
class NeighbourhoodTest {

  private static final String PRESSURE =
      """
      {"resourceType":"Observation","status":"final","subject":{"reference":"Patient/1"},\
      "effectiveDateTime":"2026-03-02T10:00:00Z","code":{"coding":[{"system":"http://loinc.org",\
      "code":"79893-4"}]},"valueQuantity":{"value":17,"unit":"mmHg"}}""";

  private static final String LATER = PRESSURE.replace("2026-03", "2026-09");

  @Test
  void theSameAddressInTwoBundlesIsTwoPersonsAtTwoExaminations() {
    List<PooledExam> exams = read(bundle(PRESSURE), bundle(PRESSURE.replace("17", "18")));
    assertNotEquals(subject(exams.get(0)), subject(exams.get(1)));
    assertNotEquals(key(exams.get(0)), key(exams.get(1)));
  }

  @Test
  void theSameBundleIsTheSamePersonWhereverItLies() {
    String bundle = bundle(PRESSURE);
    List<PooledExam> exams = read(bundle, bundle + "\r");
    assertEquals(subject(exams.get(0)), subject(exams.get(1)));
    assertEquals(key(exams.get(0)), key(exams.get(1)));
  }

  @Test
  void twoVisitsInOneBundleAreOfOnePerson() {
    List<PooledExam> exams = read(bundle(PRESSURE + "}, {\"resource\":" + LATER));
    assertEquals(2, exams.size());
    assertEquals(subject(exams.get(0)), subject(exams.get(1)));
    assertNotEquals(key(exams.get(0)), key(exams.get(1)));
  }

  /** FHIR R4, Bundle, "Resolving references in Bundles": by the root of the entry's full URL. */
  @Test
  void pagesOfOneServerKnowThePersonByItsFullAddress() {
    List<PooledExam> exams =
        read(
            page("https://north.example/fhir", PRESSURE),
            page("https://north.example/fhir", LATER),
            page("https://south.example/fhir", LATER));
    assertEquals(
        "https://w3id.org/isopter/identifier/reference|https://north.example/fhir/Patient/1",
        subject(exams.get(0)));
    assertEquals(subject(exams.get(0)), subject(exams.get(1)));
    assertNotEquals(subject(exams.get(0)), subject(exams.get(2)));
  }

  @Test
  void bareResourcesOfTwoFilesAreOfTwoPersons() {
    List<PooledExam> exams =
        Pools.reader()
            .read(List.of(bare("a", 1, PRESSURE), bare("a", 2, LATER), bare("b", 1, LATER)))
            .exams();
    assertEquals(subject(exams.get(0)), subject(exams.get(1)));
    assertNotEquals(subject(exams.get(0)), subject(exams.get(2)));
  }

  @Test
  void aPersonWithAnIdentifierIsTheSameEverywhere() {
    String known =
        PRESSURE.replace("{\"reference\":\"Patient/1\"}", "{\"identifier\":{\"value\":\"p-1\"}}");
    List<PooledExam> exams = read(bundle(known), bundle(known.replace("2026-03", "2026-09")));
    assertEquals(List.of("p-1", "p-1"), exams.stream().map(NeighbourhoodTest::subject).toList());
  }

  private static List<PooledExam> read(String... documents) {
    List<PoolDocument> all =
        java.util.stream.IntStream.range(0, documents.length)
            .mapToObj(i -> Pools.json(documents[i], i + 1))
            .toList();
    return Pools.reader().read(all).exams();
  }

  private static PoolDocument bare(String group, long line, String resource) {
    return new PoolDocument(group, line, group, PoolDocument.Form.JSON, resource.getBytes(UTF_8));
  }

  private static String bundle(String resource) {
    return "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":"
        + resource
        + "}]}";
  }

  private static String page(String server, String resource) {
    return bundle(resource)
        .replace("[{\"resource\"", "[{\"fullUrl\":\"" + server + "/Observation/o\",\"resource\"");
  }

  private static String subject(PooledExam exam) {
    return exam.exam().header().subject().identifier().map(Object::toString).orElse("");
  }

  private static String key(PooledExam exam) {
    return Optional.of(exam.exam().header().id()).map(Object::toString).orElse("");
  }
}
