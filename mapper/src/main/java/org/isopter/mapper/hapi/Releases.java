package org.isopter.mapper.hapi;

import ca.uhn.fhir.context.FhirContext;
import java.util.function.Supplier;
import org.hl7.fhir.convertors.factory.VersionConvertorFactory_40_50;
import org.hl7.fhir.convertors.factory.VersionConvertorFactory_43_50;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** Turns FHIR R4B and R5 into R4 JSON with HAPI's converters. */
public final class Releases {

  private Releases() {}

  /**
   * Returns the R4 JSON of an R5 resource in JSON.
   *
   * @throws FaultException when the text is no FHIR R5 resource, or R4 has none of its kind
   */
  public static String fromR5(String json) {
    IBaseResource resource = FhirXml.parse(FhirContext.forR5Cached().newJsonParser(), json, "R5");
    return converted(
        () ->
            VersionConvertorFactory_40_50.convertResource(
                (org.hl7.fhir.r5.model.Resource) resource));
  }

  /**
   * Returns the R4 JSON of an R4B resource in JSON.
   *
   * @throws FaultException when the text is no FHIR R4B resource, or R4 has none of its kind
   */
  public static String fromR4b(String json) {
    IBaseResource resource = FhirXml.parse(FhirContext.forR4BCached().newJsonParser(), json, "R4B");
    return converted(
        () ->
            VersionConvertorFactory_40_50.convertResource(
                VersionConvertorFactory_43_50.convertResource(
                    (org.hl7.fhir.r4b.model.Resource) resource)));
  }

  /**
   * Returns the JSON of a resource in XML, in its own release.
   *
   * @throws FaultException when the text is no FHIR resource of the release
   */
  public static String toJson(String xml, boolean r5) {
    FhirContext context = r5 ? FhirContext.forR5Cached() : FhirContext.forR4BCached();
    return FhirXml.strict(context.newJsonParser())
        .encodeResourceToString(FhirXml.parse(context.newXmlParser(), xml, r5 ? "R5" : "R4B"));
  }

  /** The converters throw whatever they like where R4 has no such resource. */
  private static String converted(Supplier<IBaseResource> conversion) {
    try {
      return FhirXml.strict(FhirXml.R4.context().newJsonParser())
          .encodeResourceToString(conversion.get());
    } catch (RuntimeException impossible) {
      throw new FaultException(
          new Fault(
              "",
              "a resource that R4 has no place for",
              "one that can be said in R4",
              "take it out, or send it as R4"));
    }
  }
}
