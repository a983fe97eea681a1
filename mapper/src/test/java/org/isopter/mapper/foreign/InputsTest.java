package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.json.Limits;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every form of input gives the same, and what cannot be read says where. */
class InputsTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @Test
  void readsXmlAsItReadsJson() {
    String json = takes("acuity-ratio");
    String xml = FhirXml.toXml(json);
    assertEquals(exam(READER.read(json)), exam(READER.read(xml.getBytes(UTF_8), Release.R4)));
  }

  @Test
  void keepsTheDigitsOfXml() {
    String xml = FhirXml.toXml(takes("side-in-code")).replace("value=\"14\"", "value=\"14.50\"");
    String exam = exam(READER.read(xml.getBytes(UTF_8), Release.R4));
    assertTrue(exam.contains("14.50 mmHg"), exam);
  }

  @Test
  void readsTheNextReleases() {
    String json = takes("unit-spelling");
    for (Release release : List.of(Release.R4B, Release.R5)) {
      assertEquals(exam(READER.read(json)), exam(READER.read(json.getBytes(UTF_8), release)));
    }
  }

  @Test
  void carriesWhatTheConversionFromR5LeavesOut() {
    String json =
        takes("unit-spelling")
            .replace(
                "\"status\":\"final\"",
                "\"status\":\"final\",\"triggeredBy\":[{\"observation\":{\"reference\":\"Observation/t\"},\"type\":\"reflex\"}]");
    Reading reading = READER.read(json.getBytes(UTF_8), Release.R5).orThrow();
    String carried = reading.exams().get(0).carried().toJson();
    assertTrue(carried.contains("Observation/t"), carried);
  }

  @Test
  void readsTheBodyStructureOfR5() {
    String json =
        """
        {"resourceType":"Observation","status":"final","effectiveDateTime":"2026-03-02T09:30:00Z",
         "subject":{"identifier":{"value":"p-17"}},
         "contained":[{"resourceType":"BodyStructure","id":"b","includedStructure":[
           {"structure":{"coding":[{"system":"http://snomed.info/sct","code":"81745001"}]},
            "laterality":{"coding":[{"system":"http://snomed.info/sct","code":"7771000"}]}}]}],
         "bodyStructure":{"reference":"#b"},
         "code":{"coding":[{"system":"http://snomed.info/sct","code":"41633001"}]},
         "valueQuantity":{"value":14,"unit":"mmHg","system":"http://unitsofmeasure.org",
           "code":"mm[Hg]"}}
        """;
    assertTrue(exam(READER.read(json)).contains("pressure left"), exam(READER.read(json)));
  }

  @ParameterizedTest
  @CsvSource({"searchset", "document", "transaction", "message", "history", "batch", "collection"})
  void readsBundlesOfAnyKind(String kind) {
    String bundle = takes("subject-patient").replace("\"collection\"", "\"" + kind + "\"");
    Reading reading = READER.read(bundle).orThrow();
    assertEquals(1, reading.exams().size());
    assertEquals(
        "p-17",
        reading.exams().get(0).exam().header().subject().identifier().orElseThrow().value());
  }

  @Test
  void keepsPersonsApartWhoAreOnlyNamedInsideTheirObservations() {
    String inside =
        takes("unit-spelling")
            .replace(
                "\"subject\":{\"identifier\":{\"system\":\"https://hospital.example/people\",\"value\":\"p-17\"}}",
                "\"contained\":[{\"resourceType\":\"Patient\",\"id\":\"p\",\"birthDate\":\"1950-01-01\"}],"
                    + "\"subject\":{\"reference\":\"#p\"}");
    assertTrue(inside.contains("#p"), inside);
    String other = inside.replace("1950", "1990");
    String bundle =
        "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":%s},{\"resource\":%s}]}"
            .formatted(inside, other);
    Reading reading = READER.read(bundle).orThrow();
    assertEquals(2, reading.exams().size());
    assertEquals(
        2, reading.exams().stream().map(e -> e.exam().header().subject()).distinct().count());
  }

  @Test
  void knowsAPersonByTheAddressOnTheServerOfTheBundle() {
    String one =
        takes("unit-spelling")
            .replace(
                "\"subject\":{\"identifier\":{\"system\":\"https://hospital.example/people\",\"value\":\"p-17\"}}",
                "\"subject\":{\"reference\":\"Patient/1\"}");
    String bundle =
        """
        {"resourceType":"Bundle","type":"collection","entry":[
         {"fullUrl":"https://a.example/fhir/Observation/1","resource":%s},
         {"fullUrl":"https://b.example/fhir/Observation/1","resource":%s},
         {"fullUrl":"urn:uuid:6bc28939-482a-3b1a-a5b8-f6fff61e3b92","resource":%s}]}
        """
            .formatted(one, one, one);
    assertEquals(
        List.of(
            "https://a.example/fhir/Patient/1", "https://b.example/fhir/Patient/1", "Patient/1"),
        READER.read(bundle).orThrow().exams().stream()
            .map(exam -> exam.exam().header().subject().identifier().orElseThrow().value())
            .toList());
  }

  @Test
  void givesEachPersonTheirOwnExaminations() {
    String one = takes("unit-spelling");
    String two = one.replace("p-17", "p-18");
    String bundle =
        "{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"entry\":[{\"resource\":%s},{\"resource\":%s}]}"
            .formatted(one, two);
    Reading reading = READER.read(bundle).orThrow();
    assertEquals(2, reading.exams().size());
    assertEquals(2, reading.exams().stream().map(e -> e.exam().header().id()).distinct().count());
  }

  @Test
  void namesTheLineAndColumnOfBrokenJson() {
    List<Fault> faults = READER.read("{\"resourceType\":\n  \"Observation\",\n  oops}").faults();
    assertEquals("line 3, column 3", faults.get(0).path(), faults.toString());
  }

  @Test
  void refusesTwoMembersOfOneName() {
    assertTrue(!READER.read("{\"a\":1,\"a\":2}").isOk());
  }

  @Test
  void refusesASecondDocument() {
    assertTrue(READER.read("{} {}").faults().get(0).seen().contains("second"));
  }

  @Test
  void refusesWhatIsTooDeepTooLongOrTooLarge() {
    ForeignReader small =
        new ForeignReader(Catalogue.standard(), Options.usual().limits(new Limits(10, 100, 1000)));
    String deep = "[".repeat(50) + "]".repeat(50);
    String longString = "[\"" + "x".repeat(200) + "\"]";
    byte[] large = ("[" + "1,".repeat(1000) + "1]").getBytes(UTF_8);
    for (Result<Reading> read :
        List.of(small.read(deep), small.read(longString), small.read(large, Release.R4))) {
      assertTrue(read.faults().get(0).advice().contains("raise the limit"), read.toString());
      assertFalse(read.faults().get(0).seen().contains("StreamReadConstraints"), read.toString());
    }
  }

  @Test
  void refusesEntitiesThatGrowWithoutReadingThem() {
    StringBuilder entities = new StringBuilder("<!ENTITY a0 \"aaaaaaaaaa\">");
    for (int i = 1; i < 12; i++) {
      String ten = ("&a" + (i - 1) + ";").repeat(10);
      entities.append("<!ENTITY a" + i + " \"" + ten + "\">");
    }
    String xml =
        "<!DOCTYPE o ["
            + entities
            + "]><Observation xmlns=\"http://hl7.org/fhir\">"
            + "<note><text value=\"&a11;\"/></note></Observation>";
    for (Release release : Release.values()) {
      Fault fault = READER.read(xml.getBytes(UTF_8), release).faults().get(0);
      assertEquals("a FHIR " + release.name() + " resource", fault.wanted());
      assertTrue(fault.seen().length() < 1_000, fault.seen());
    }
  }

  @ParameterizedTest
  @CsvSource({"R4B,1e999999", "R5,1e999999", "R5,-1.5E+99999999999"})
  void refusesNumbersThatTakeMinutesToWriteOut(Release release, String number) {
    String json =
        "{\"resourceType\":\"Observation\",\"valueQuantity\":{\"value\": %s}}".formatted(number);
    String xml =
        "<Observation xmlns=\"http://hl7.org/fhir\"><valueQuantity><value value=\"%s\"/>"
                .formatted(number)
            + "</valueQuantity></Observation>";
    for (String document : List.of(json, xml)) {
      Result<Reading> read = READER.read(document.getBytes(UTF_8), release);
      assertTrue(read.faults().get(0).seen().contains("digits"), read.toString());
    }
  }

  @Test
  void takesNamesThatLookLikeSuchNumbers() {
    String names = "123e4567 1e234567-89ab-4cde-8f01-23456789abcd ".repeat(500);
    String json =
        "{\"resourceType\":\"Observation\",\"status\":\"final\",\"code\":{\"text\":\"%s\"}}"
            .formatted(names);
    assertTrue(READER.read(json.getBytes(UTF_8), Release.R5).isOk());
  }

  @Test
  void refusesXmlThatNestsWithoutEnd() {
    String xml = "<Bundle xmlns=\"http://hl7.org/fhir\">" + "<entry>".repeat(200_000);
    assertFalse(READER.read(xml.getBytes(UTF_8), Release.R4).isOk());
  }

  @Test
  void refusesExternalEntities() {
    String xml =
        "<!DOCTYPE o [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>"
            + "<Observation xmlns=\"http://hl7.org/fhir\"><note><text value=\"&x;\"/></note>"
            + "</Observation>";
    for (Release release : Release.values()) {
      assertTrue(!READER.read(xml.getBytes(UTF_8), release).isOk(), release.name());
    }
  }

  @Test
  void saysOfEachVersionWhichHolds() {
    String first =
        takes("unit-spelling")
            .replace("\"status\"", "\"id\":\"o\",\"meta\":{\"versionId\":\"1\"},\"status\"");
    String later =
        first
            .replace("\"versionId\":\"1\"", "\"versionId\":\"2\"")
            .replace("\"value\":14", "\"value\":15");
    String unsaid =
        first
            .replace("\"versionId\":\"1\"", "\"source\":\"x\"")
            .replace("\"value\":14", "\"value\":16");
    assertEquals(List.of("replaced", "translated"), words(first, later));
    assertEquals(List.of("translated", "replaced"), words(later, first));
    assertEquals(List.of("translated", "duplicate"), words(first, first));
    assertEquals(List.of("versions-undecided", "versions-undecided"), words(unsaid, first));
  }

  @Test
  void refusesEveryModifier() {
    String plain = takes("unit-spelling");
    String extension =
        "\"modifierExtension\":[{\"url\":\"https://hospital.example/not\",\"valueBoolean\":true}],\"status\"";
    assertEquals("modified", words(plain.replace("\"status\"", extension)).get(0));
    assertEquals(
        "modified",
        words(
                plain.replace(
                    "\"status\"", "\"implicitRules\":\"https://hospital.example/r\",\"status\""))
            .get(0));
    for (String status : List.of("entered-in-error", "cancelled", "registered", "unknown")) {
      assertEquals("retracted", words(plain.replace("\"final\"", "\"" + status + "\"")).get(0));
    }
  }

  private static List<String> words(String... resources) {
    String entries = String.join("},{\"resource\":", resources);
    String bundle =
        "{\"resourceType\":\"Bundle\",\"type\":\"history\",\"entry\":[{\"resource\":"
            + entries
            + "}]}";
    return READER.read(bundle).orThrow().resources().stream()
        .map(
            read ->
                read.outcome() instanceof ResourceOutcome.Kept kept
                    ? kept.reasons().get(0).why().word()
                    : read.outcome().word())
        .toList();
  }

  private static String takes(String rule) {
    return ForeignRules.byId(rule).orElseThrow().takes().json();
  }

  private static String exam(Result<Reading> reading) {
    return reading.orThrow().exams().get(0).exam().toString();
  }
}
