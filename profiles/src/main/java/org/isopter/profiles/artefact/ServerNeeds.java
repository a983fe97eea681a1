package org.isopter.profiles.artefact;

import java.util.List;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementKind;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.RestfulCapabilityMode;
import org.hl7.fhir.r4.model.CapabilityStatement.SystemRestfulInteraction;
import org.hl7.fhir.r4.model.CapabilityStatement.TypeRestfulInteraction;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.Enumerations.SearchParamType;
import org.hl7.fhir.r4.model.SearchParameter;
import org.hl7.fhir.r4.model.SearchParameter.XPathUsageType;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.value.Canonical;

/** Makes what a server needs to hold examinations and to find them. */
final class ServerNeeds {

  private static final String SITE = "observation-body-site";
  private static final String SITE_CODE = "body-site";
  private static final String STANDARD = "http://hl7.org/fhir/SearchParameter/";

  private ServerNeeds() {}

  /** Returns the search for the eye: R4 has none of its own. */
  static SearchParameter search() {
    SearchParameter search =
        Metadata.fill(new SearchParameter(), SITE, url("SearchParameter", SITE));
    search.setDescription("The eye that a finding is about: the body site of an observation.");
    search.setCode(SITE_CODE).addBase("Observation");
    search.setType(SearchParamType.TOKEN);
    search.setExpression("Observation.bodySite");
    search.setXpath("f:Observation/f:bodySite").setXpathUsage(XPathUsageType.NORMAL);
    return search;
  }

  /** Returns what a server has to offer for examinations to be sent, sent again and found. */
  static CapabilityStatement capabilities(List<StructureDefinition> profiles) {
    String id = "examination-server";
    CapabilityStatement needs =
        Metadata.fill(
            new CapabilityStatement(),
            id,
            url("CapabilityStatement", id),
            "A server of eye examinations");
    needs.setDescription(
        "What is needed of a server: it takes an examination as one transaction of conditional"
            + " updates, so that one sent twice is held once, and finds findings by person, code,"
            + " eye and day.");
    needs.setKind(CapabilityStatementKind.REQUIREMENTS);
    needs.setFhirVersion(FHIRVersion._4_0_1);
    needs.addFormat("json");
    CapabilityStatementRestComponent rest = needs.addRest().setMode(RestfulCapabilityMode.SERVER);
    observations(rest, profiles);
    CapabilityStatementRestResourceComponent report = resource(rest, "DiagnosticReport");
    token(report, "identifier", STANDARD + "DiagnosticReport-identifier");
    resource(rest, "Provenance");
    rest.addInteraction().setCode(SystemRestfulInteraction.TRANSACTION);
    return needs;
  }

  private static void observations(
      CapabilityStatementRestComponent rest, List<StructureDefinition> profiles) {
    CapabilityStatementRestResourceComponent observation = resource(rest, "Observation");
    profiles.stream()
        .filter(profile -> profile.getType().equals("Observation") && !profile.getAbstract())
        .forEach(profile -> observation.addSupportedProfile(profile.getUrl()));
    token(observation, "identifier", STANDARD + "clinical-identifier");
    token(observation, "code", STANDARD + "clinical-code");
    token(observation, SITE_CODE, url("SearchParameter", SITE));
    search(observation, "patient", STANDARD + "clinical-patient", SearchParamType.REFERENCE);
    search(observation, "date", STANDARD + "clinical-date", SearchParamType.DATE);
  }

  private static CapabilityStatementRestResourceComponent resource(
      CapabilityStatementRestComponent rest, String type) {
    CapabilityStatementRestResourceComponent resource = rest.addResource().setType(type);
    for (TypeRestfulInteraction each :
        List.of(
            TypeRestfulInteraction.READ,
            TypeRestfulInteraction.UPDATE,
            TypeRestfulInteraction.SEARCHTYPE)) {
      resource.addInteraction().setCode(each);
    }
    return resource.setConditionalUpdate(true);
  }

  private static void token(
      CapabilityStatementRestResourceComponent resource, String name, String definition) {
    search(resource, name, definition, SearchParamType.TOKEN);
  }

  private static void search(
      CapabilityStatementRestResourceComponent resource,
      String name,
      String definition,
      SearchParamType type) {
    resource.addSearchParam().setName(name).setDefinition(definition).setType(type);
  }

  private static String url(String type, String id) {
    return Canonical.BASE + "/" + type + "/" + id;
  }
}
