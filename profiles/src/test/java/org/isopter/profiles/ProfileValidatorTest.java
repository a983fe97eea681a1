package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The validator accepts what the catalogue allows and says what else it saw. */
class ProfileValidatorTest {

  private static final int FACTS = 4;

  private final ProfileValidator validator = ProfileValidator.standard();

  private final String pressure =
      json(
          Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG))
              .by(Tonometry.GOLDMANN));

  private final String pupil =
      json(
          Fact.of(
              Pupils.SIZE,
              Site.LEFT,
              new Pupils.Size(Quantity.of("3.5", Unit.MILLIMETRE), Lighting.DIM)));

  private final String acuity =
      json(
          Fact.of(
              Acuities.DISTANCE,
              Site.LEFT,
              AcuityReading.of(
                      new Acuity.Fraction(new BigDecimal(6), new BigDecimal(9), Unit.METRE, -2))
                  .through(Correction.UNAIDED)));

  @TestFactory
  Stream<DynamicTest> acceptsWhatTheCatalogueAllows() {
    long seed = new Random().nextLong();
    ExamSampler facts = new ExamSampler(Catalogue.standard().all(), new Random(seed));
    Map<String, String> written = new LinkedHashMap<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (int i = 1; i <= FACTS; i++) {
        written.put(finding.id() + " " + i, json(facts.fact(finding)));
      }
    }
    Map<String, List<String>> said = ManyAtOnce.said(validator, written);
    return written.entrySet().stream()
        .map(
            fact ->
                DynamicTest.dynamicTest(
                    fact.getKey(),
                    () ->
                        assertEquals(
                            List.of(),
                            said.get(fact.getKey()),
                            "seed " + seed + ": " + fact.getValue())));
  }

  @Test
  void acceptsEveryReasonForAbsence() {
    for (Absence reason : Absence.values()) {
      String json = json(Fact.absent(Pupils.SIZE, Site.LEFT, reason));
      assertEquals(List.of(), validator.validate(json), reason.word());
    }
  }

  @Test
  void namesTheUnitThatItSawAndTheOneItWanted() {
    refuses(
        pressure.replace("mm[Hg]", "kPa"),
        "ERROR Observation.value.ofType(Quantity).code: saw kPa, wanted mm[Hg]");
  }

  @Test
  void acceptsWhatAnotherSystemPutsBesideOurs() {
    String local = "\"system\":\"https://example.org/codes\",\"code\":\"x1\"";
    String component =
        "\"component\":[{\"code\":{\"coding\":[{%s}]},\"valueString\":\"x\"}],".formatted(local);
    for (String open :
        List.of(
            pressure.replace("}],\"text\"", "},{%s}],\"text\"".formatted(local)),
            pressure.replace("\"coding\":[{", "\"coding\":[{%s},{".formatted(local)),
            pressure.replaceFirst("\"status\"", component + "\"status\""),
            pressure.replace("\"mmHg\"", "\"mm Hg\""),
            pressure.replaceAll("\"display\":\"[^\"]*\",?", "").replace(",}", "}"))) {
      assertNotEquals(pressure, open);
      assertEquals(List.of(), errors(open));
    }
  }

  private List<ValidationMessage> errors(String json) {
    return validator.validate(json).stream().filter(ValidationMessage::isError).toList();
  }

  @Test
  void namesTheSliceThatIsMissing() {
    refuses(
        pressure.replace(
            ",{\"system\":\"http://snomed.info/sct\",\"code\":\"41633001\","
                + "\"display\":\"Intraocular pressure (observable entity)\"}",
            ""),
        "ERROR Observation.code: saw no element of slice Observation.code.coding:any-side, wanted"
            + " one with http://snomed.info/sct|41633001");
  }

  @Test
  void namesTheAnswersWhereACodeIsNotAmongThem() {
    refuses(
        pupil.replace("\"code\":\"dim\"", "\"code\":\"dark\""),
        "ERROR Observation.component[0].value.ofType(CodeableConcept): Unknown code"
            + " 'https://w3id.org/isopter/fhir/CodeSystem/lighting#dark'",
        "WARNING Observation.component[0].value.ofType(CodeableConcept): saw"
            + " https://w3id.org/isopter/fhir/CodeSystem/lighting|dark, wanted one of: bright"
            + " Bright light, room Room light, dim Dim light");
  }

  @Test
  void warnsOfAMethodThatIsNotAmongOurs() {
    List<ValidationMessage> messages =
        validator.validate(pressure.replace("389152008", "389152009"));
    assertEquals(1, messages.size(), messages::toString);
    assertEquals("Observation.method", messages.get(0).path());
    assertEquals(ValidationMessage.Severity.WARNING, messages.get(0).severity());
  }

  @Test
  void refusesAnotherTypeOfValue() {
    refuses(
        pressure.replaceFirst("\"valueQuantity\":\\{[^}]*}", "\"valueInteger\":14"),
        "ERROR Observation.value.ofType(integer): saw a value of type integer, wanted Quantity");
  }

  @Test
  void refusesAComparator() {
    refuses(
        pressure.replace("\"value\":14", "\"comparator\":\"<\",\"value\":14"),
        "ERROR Observation.value.ofType(Quantity): saw 1 of Observation.value[x].comparator,"
            + " wanted at most 0");
  }

  @Test
  void refusesTheStatusCorrected() {
    refuses(
        pressure.replace("\"final\"", "\"corrected\""),
        "ERROR Observation.status: saw corrected, wanted one of: preliminary Preliminary, final"
            + " Final, amended Amended, entered-in-error Entered in Error");
  }

  @Test
  void refusesAFractionOfOneUnitUnderTheNotationOfAnother() {
    refuses(
        acuity.replace("\"code\":\"snellen-metric\"", "\"code\":\"snellen-imperial\""),
        "ERROR Observation: distance-acuity-as-snellen-imperial: saw 6 m (m) over 9 m (m) beside"
            + " https://w3id.org/isopter/fhir/CodeSystem/acuity-notation|snellen-imperial, wanted:"
            + " beside notation snellen-imperial the value is a fraction of 0.1 to 40 ft over 0.1"
            + " to 8000 ft");
  }

  @Test
  void refusesAProfileThatNobodyKnows() {
    String unknown = "https://w3id.org/isopter/fhir/StructureDefinition/pressure";
    refuses(
        pressure.replace(
            "/StructureDefinition/intraocular-pressure", "/StructureDefinition/pressure"),
        "ERROR Observation.meta.profile[0]: Profile reference '"
            + unknown
            + "' has not been checked because it could not be found");
  }

  @Test
  void acceptsThePanelOfAnExamination() {
    String panel =
        """
        {"resourceType": "Observation",
         "meta": {"profile": ["https://w3id.org/isopter/fhir/StructureDefinition/eye-examination"]},
         "identifier": [{"system": "https://w3id.org/isopter/identifier/record", "value": "r-1"}],
         "status": "final",
         "category": [{"coding": [{"code": "exam",
           "system": "http://terminology.hl7.org/CodeSystem/observation-category"}]}],
         "code": {"coding": [{"system": "https://w3id.org/isopter/fhir/CodeSystem/finding",
           "code": "eye-examination", "display": "Eye examination"}]},
         "subject": {"type": "Patient", "identifier": {"value": "p-1"}},
         "effectiveDateTime": "2026-03-02T09:30:00+01:00",
         "component": [{"code": {"coding": [{"code": "setting",
           "system": "https://w3id.org/isopter/fhir/CodeSystem/part"}]},
           "valueCodeableConcept": {"coding": [{"code": "bedside",
           "system": "https://w3id.org/isopter/fhir/CodeSystem/setting"}]}}]}
        """;
    assertEquals(List.of(), validator.validate(panel));
    assertNotEquals(List.of(), validator.validate(panel.replace("\"bedside\"", "\"beach\"")));
    assertNotEquals(List.of(), validator.validate(panel.replace("\"eye-examination\"", "\"x\"")));
  }

  @Test
  void refusesTextThatIsNoResource() {
    for (String text : List.of("", "{nothing", "{\"resourceType\": \"Observation\"", "[]", "7")) {
      assertEquals(
          List.of(ValidationMessage.Severity.FATAL),
          validator.validate(text).stream().map(ValidationMessage::severity).toList(),
          text);
    }
  }

  private void refuses(String json, String... messages) {
    assertNotEquals(pressure, json);
    assertEquals(
        List.of(messages),
        validator.validate(json).stream().map(ValidationMessage::toString).toList());
  }

  private static String json(Fact<?> fact) {
    return Wire.observation(fact).toString();
  }
}
