package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A whole visit is checked as one bundle; what has no profile of ours keeps to the standard. */
class BundleTest {

  static final String BUNDLE =
      """
      {"resourceType": "Bundle", "type": "collection", "entry": [
        {"fullUrl": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a01", "resource": {
          "resourceType": "DiagnosticReport", "id": "report", "status": "final",
          "code": {"coding": [{"system": "http://loinc.org", "code": "70947-7",
            "display": "General eye evaluation"}]},
          "subject": {"type": "Patient", "identifier": {"value": "p-1"}},
          "effectiveDateTime": "2026-03-02T09:30:00+01:00",
          "result": [{"reference": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a02"}]}},
        {"fullUrl": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a02", "resource": {
          "resourceType": "Observation", "id": "panel",
          "meta": {"profile": ["https://w3id.org/isopter/fhir/StructureDefinition/eye-examination"]},
          "identifier": [{"system": "https://w3id.org/isopter/identifier/record",
            "value": "r-1"}],
          "status": "final",
          "category": [{"coding": [{"code": "exam",
            "system": "http://terminology.hl7.org/CodeSystem/observation-category"}]}],
          "code": {"coding": [{"system": "https://w3id.org/isopter/fhir/CodeSystem/finding",
            "code": "eye-examination", "display": "Eye examination"}]},
          "subject": {"type": "Patient", "identifier": {"value": "p-1"}},
          "effectiveDateTime": "2026-03-02T09:30:00+01:00",
          "hasMember": [{"reference": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a03"}]}},
        {"fullUrl": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a03", "resource": %s},
        {"fullUrl": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a04", "resource": {
          "resourceType": "Provenance", "id": "origin",
          "target": [{"reference": "urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-3f4e1a1a9a01"}],
          "recorded": "2026-03-02T09:30:00+01:00",
          "agent": [{"who": {"display": "isopter 0.1.0"}}]}}]}
      """;

  private final ProfileValidator validator = ProfileValidator.standard();
  private final String pressure =
      Wire.observation(Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG)))
          .toString();

  @Test
  void acceptsAVisitWithItsReportAndItsOrigin() {
    assertEquals(List.of(), messages(BUNDLE.formatted(pressure)));
  }

  @ParameterizedTest
  @CsvSource({"67, a", "0, a", "130, a", "5, mo", "90, d"})
  void takesTheAgeOfThePerson(String number, String unit) {
    assertEquals(List.of(), messages(ofAge(number, unit)));
  }

  @ParameterizedTest
  @CsvSource({"131, a, range", "6.5, a, decimals", "91, d, range", "5000, a, range"})
  void refusesAnAgeThatNobodyHas(String number, String unit, String limit) {
    List<String> said = messages(ofAge(number, unit));
    assertEquals(1, said.size(), said::toString);
    assertTrue(said.get(0).contains("examination-age-" + limit), said::toString);
    assertTrue(said.get(0).contains("saw " + number), said::toString);
  }

  private String ofAge(String number, String unit) {
    Map<String, String> words = Map.of("a", "years", "mo", "months", "d", "days");
    String component =
        """
        "component": [{"code": {"coding": [{"system": "http://loinc.org", "code": "30525-0",
          "display": "Age"}]}, "valueQuantity": {"value": %s, "unit": "%s",
          "system": "http://unitsofmeasure.org", "code": "%s"}}],
        "hasMember\""""
            .formatted(number, words.get(unit), unit);
    return BUNDLE.formatted(pressure).replace("\"hasMember\"", component);
  }

  @Test
  void saysWhichEntryAFaultIsIn() {
    assertEquals(
        List.of(
            "ERROR Bundle.entry[2].resource: intraocular-pressure-value-range: saw 99 mmHg"
                + " (mm[Hg]), wanted: the value is 0 to 80 mmHg"),
        messages(BUNDLE.formatted(pressure.replace("\"value\":14", "\"value\":99"))));
  }

  @Test
  void namesTheMissingSliceInsideAnEntryToo() {
    assertEquals(
        List.of(
            "ERROR Bundle.entry[2].resource.code: saw no element of slice"
                + " Observation.code.coding:any-side, wanted one with"
                + " http://snomed.info/sct|41633001"),
        messages(BUNDLE.formatted(pressure.replace("41633001", "41633002"))));
  }

  @Test
  void keepsTheOthersToTheStandard() {
    assertEquals(
        List.of("ERROR Bundle.entry[3].resource: saw 0 of Provenance.recorded, wanted at least 1"),
        messages(
            BUNDLE
                .formatted(pressure)
                .replace("\"recorded\": \"2026-03-02T09:30:00+01:00\",", "")));
  }

  private List<String> messages(String json) {
    return validator.validate(json).stream().map(ValidationMessage::toString).toList();
  }
}
