package org.isopter.mapper.hapi;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import org.hl7.fhir.convertors.factory.VersionConvertorFactory_40_50;
import org.hl7.fhir.convertors.factory.VersionConvertorFactory_43_50;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.isopter.model.value.FaultException;

/** Turns FHIR R4B and R5 into R4 JSON with HAPI's converters. */
public final class Releases {

  private Releases() {}

  /**
   * Returns the R4 JSON of an R5 resource.
   *
   * @throws FaultException when the text is no FHIR R5 resource
   */
  public static String fromR5(String text, boolean xml) {
    IBaseResource resource = FhirXml.parse(parser(FhirContext.forR5Cached(), xml), text, "R5");
    return r4(
        VersionConvertorFactory_40_50.convertResource((org.hl7.fhir.r5.model.Resource) resource));
  }

  /**
   * Returns the R4 JSON of an R4B resource.
   *
   * @throws FaultException when the text is no FHIR R4B resource
   */
  public static String fromR4b(String text, boolean xml) {
    IBaseResource resource = FhirXml.parse(parser(FhirContext.forR4BCached(), xml), text, "R4B");
    return r4(
        VersionConvertorFactory_40_50.convertResource(
            VersionConvertorFactory_43_50.convertResource(
                (org.hl7.fhir.r4b.model.Resource) resource)));
  }

  private static String r4(IBaseResource resource) {
    return FhirXml.strict(FhirXml.R4.context().newJsonParser()).encodeResourceToString(resource);
  }

  private static IParser parser(FhirContext context, boolean xml) {
    return xml ? context.newXmlParser() : context.newJsonParser();
  }
}
