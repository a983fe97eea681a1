package org.isopter.mapper.view;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r5.formats.JsonParser;
import org.hl7.fhir.r5.model.StructureDefinition;
import org.hl7.fhir.utilities.npm.NpmPackage;

/** The types of R5 from its published package; all that stands there takes four times as long. */
final class R5Types extends PrePopulatedValidationSupport {

  private static final String PACKAGE = "/org/hl7/fhir/r5/packages/hl7.fhir.r5.core-5.0.0.tgz";

  private R5Types(FhirContext release) {
    super(release);
  }

  static R5Types in(FhirContext release) {
    R5Types types = new R5Types(release);
    try (InputStream in = R5Types.class.getResourceAsStream(PACKAGE)) {
      NpmPackage all = NpmPackage.fromPackage(in);
      for (String name : all.listResources("StructureDefinition")) {
        try (InputStream one = all.load("package", name)) {
          types.add((StructureDefinition) new JsonParser().parse(one));
        }
      }
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return types;
  }

  private void add(StructureDefinition definition) {
    if (definition.getDerivation() != StructureDefinition.TypeDerivationRule.CONSTRAINT) {
      addStructureDefinition(definition);
    }
  }

  @Override
  public <T extends IBaseResource> List<T> fetchAllNonBaseStructureDefinitions() {
    return List.of();
  }
}
