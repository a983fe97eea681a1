package org.isopter.mapper.view;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.WorkerContextValidationSupportAdapter;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r5.context.IWorkerContext;

/**
 * The types of a release of FHIR, without its profiles: those take long to load and say nothing.
 */
public final class Definitions extends DefaultProfileValidationSupport {

  private final FhirContext release;

  private Definitions(FhirContext release) {
    super(release);
    this.release = release;
  }

  /** Returns the types of R4. */
  public static IWorkerContext r4() {
    return R4.TYPES;
  }

  /** Returns the types of R5. */
  public static IWorkerContext r5() {
    return R5.TYPES;
  }

  /** Loaded once for all tests. */
  private static final class R4 {
    private static final IWorkerContext TYPES =
        of(FhirContext.forR4Cached(), new Definitions(FhirContext.forR4Cached()));
  }

  /** Loaded once for all tests. */
  private static final class R5 {
    private static final IWorkerContext TYPES =
        of(FhirContext.forR5Cached(), R5Types.in(FhirContext.forR5Cached()));
  }

  private static IWorkerContext of(FhirContext release, IValidationSupport types) {
    return new WorkerContextValidationSupportAdapter(
        new ValidationSupportChain(types, new InMemoryTerminologyServerValidationSupport(release)));
  }

  @Override
  public <T extends IBaseResource> List<T> fetchAllStructureDefinitions() {
    List<T> all = super.fetchAllStructureDefinitions();
    return all.stream().filter(this::isType).toList();
  }

  @Override
  public <T extends IBaseResource> List<T> fetchAllNonBaseStructureDefinitions() {
    return List.of();
  }

  private boolean isType(IBaseResource definition) {
    return !"constraint"
        .equals(release.newTerser().getSinglePrimitiveValueOrNull(definition, "derivation"));
  }
}
