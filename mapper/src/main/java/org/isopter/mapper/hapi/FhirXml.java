package org.isopter.mapper.hapi;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import java.util.Objects;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** Turns FHIR R4 JSON into XML and back with HAPI, strictly: nothing unknown is dropped. */
public final class FhirXml {

  private FhirXml() {}

  /**
   * Returns the XML of a resource.
   *
   * @throws FaultException when the JSON is no FHIR R4 resource
   */
  public static String toXml(String json) {
    return strict(R4.context().newXmlParser())
        .setPrettyPrint(true)
        .encodeResourceToString(
            parse(R4.context().newJsonParser(), Objects.requireNonNull(json, "json"), "R4"));
  }

  /**
   * Returns the JSON of a resource.
   *
   * @throws FaultException when the XML is no FHIR R4 resource
   */
  public static String toJson(String xml) {
    return strict(R4.context().newJsonParser())
        .encodeResourceToString(
            parse(R4.context().newXmlParser(), Objects.requireNonNull(xml, "xml"), "R4"));
  }

  static IBaseResource parse(IParser parser, String text, String release) {
    DigitBudget.check(text);
    try {
      return strict(parser).parseResource(text);
    } catch (DataFormatException unreadable) {
      throw noResource(String.valueOf(unreadable.getMessage()), release);
    } catch (IndexOutOfBoundsException givenUp) {
      // HAPI's JSON parser ends so at a member without a name.
      throw noResource("a text that the parser gives up on, such as a nameless member", release);
    }
  }

  private static FaultException noResource(String seen, String release) {
    return new FaultException(
        new Fault(
            "", seen, "a FHIR " + release + " resource", "correct the resource, or send it again"));
  }

  static IParser strict(IParser parser) {
    parser.setParserErrorHandler(new StrictErrorHandler());
    // Entries keep the ids and the references they were given.
    parser.setOverrideResourceIdWithBundleEntryFullUrl(false);
    return parser;
  }

  /** Holds the one context; it is costly to make and safe to share. */
  static final class R4 {
    private static final FhirContext CONTEXT = FhirContext.forR4Cached();

    private R4() {}

    static FhirContext context() {
      return CONTEXT;
    }
  }
}
