package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The validator works with the parts of its library that the build leaves in. */
class R4ValidationTest {

  private static FhirValidator validator;

  @BeforeAll
  static void loadDefinitions() {
    FhirContext r4 = FhirContext.forR4Cached();
    validator =
        r4.newValidator()
            .registerValidatorModule(
                new FhirInstanceValidator(
                    new ValidationSupportChain(
                        new DefaultProfileValidationSupport(r4),
                        new InMemoryTerminologyServerValidationSupport(r4),
                        new CommonCodeSystemsTerminologyService(r4),
                        new SnapshotGeneratingValidationSupport(r4))));
  }

  @Test
  void aCompleteObservationIsValid() {
    var result =
        validator.validateWithResult(
            """
            {"resourceType": "Observation", "status": "final", "code": {"text": "x"},
             "text": {"status": "generated",
              "div": "<div xmlns=\\"http://www.w3.org/1999/xhtml\\">x</div>"},
             "subject": {"display": "x"}, "effectiveDateTime": "2026-01-01",
             "performer": [{"display": "x"}]}
            """);
    assertTrue(result.isSuccessful(), result::toString);
  }

  @Test
  void anObservationWithoutAStatusIsNot() {
    var result =
        validator.validateWithResult(
            """
            {"resourceType": "Observation", "code": {"text": "x"}}
            """);
    assertFalse(result.isSuccessful());
  }
}
