package org.isopter.profiles;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.isopter.profiles.artefact.Artefacts;

/** Puts our definitions beside those of the standard, without a network. */
final class Support {

  /** Keeps the standard's definitions once they are read; that takes longer than all else. */
  private static final IValidationSupport STANDARD =
      new DefaultProfileValidationSupport(FhirContext.forR4Cached());

  private Support() {}

  static ValidationSupportChain chain(Artefacts artefacts) {
    FhirContext r4 = FhirContext.forR4Cached();
    PrePopulatedValidationSupport own = new PrePopulatedValidationSupport(r4);
    artefacts.resources().forEach(own::addResource);
    // Ours comes first: the standard's own LOINC and SNOMED CT have no codes in them.
    return new ValidationSupportChain(
        own,
        STANDARD,
        new InMemoryTerminologyServerValidationSupport(r4),
        new CommonCodeSystemsTerminologyService(r4),
        new SnapshotGeneratingValidationSupport(r4),
        othersSystems(r4));
  }

  /**
   * A code of a system that is not known may stand beside ours, and is not judged. The library has
   * deprecated this, and has nothing else that says so.
   */
  @SuppressWarnings("deprecation")
  private static IValidationSupport othersSystems(FhirContext r4) {
    var support = new UnknownCodeSystemWarningValidationSupport(r4);
    support.setNonExistentCodeSystemSeverity(IValidationSupport.IssueSeverity.WARNING);
    return support;
  }
}
