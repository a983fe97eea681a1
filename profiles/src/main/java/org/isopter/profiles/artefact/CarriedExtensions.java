package org.isopter.profiles.artefact;

import java.util.List;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.StructureDefinition.ExtensionContextType;
import org.hl7.fhir.r4.model.StructureDefinition.StructureDefinitionKind;
import org.hl7.fhir.r4.model.StructureDefinition.TypeDerivationRule;
import org.hl7.fhir.r4.model.UriType;
import org.isopter.model.value.Canonical;

/** Makes the extensions in which what another system wrote goes along. */
final class CarriedExtensions {

  private CarriedExtensions() {}

  static List<StructureDefinition> make() {
    return List.of(leftOver(), kept());
  }

  private static StructureDefinition leftOver() {
    StructureDefinition extension =
        start("left-over", Canonical.LEFT_OVER, "What was left over", "Observation", "Meta");
    extension.setDescription(
        "What a resource or a bundle of another system said that no rule took: each value with its"
            + " place there, so that it can be put back unchanged.");
    Differential differential = new Differential(extension);
    root(differential, extension);
    differential.at("Extension.extension").setMin(1);
    ElementDefinition leaf = differential.at("Extension.extension:leaf");
    leaf.setMin(1).setMax("*").setShort("One value that was left over");
    part(differential, "at", 1, "Where it stood, as a JSON pointer (RFC 6901); / is the whole");
    part(differential, "json", 0, "The value as JSON, unless it stands at that place here too");
    differential.at("Extension.extension:leaf.url").setFixed(new UriType("leaf"));
    differential.none("Extension.extension:leaf.value[x]");
    differential.at("Extension.url").setFixed(new UriType(Canonical.LEFT_OVER));
    differential.none("Extension.value[x]");
    return extension;
  }

  private static void part(Differential differential, String name, int least, String about) {
    String part = "Extension.extension:leaf.extension:" + name;
    differential.at(part).setMin(least).setMax("1").setShort(about);
    differential.at(part + ".url").setFixed(new UriType(name));
    differential.once(part + ".value[x]").addType().setCode("string");
  }

  private static StructureDefinition kept() {
    StructureDefinition extension =
        start("kept", Canonical.KEPT, "Kept as it came", "Bundle.entry");
    extension.setDescription(
        "The resource of this entry is another system's, goes along as it came, and is no part of"
            + " the examination.");
    Differential differential = new Differential(extension);
    root(differential, extension);
    differential.none("Extension.extension");
    differential.at("Extension.url").setFixed(new UriType(Canonical.KEPT));
    ElementDefinition reason = differential.once("Extension.value[x]");
    reason.setShort("Why it was not taken, in a word").addType().setCode("code");
    return extension;
  }

  private static void root(Differential differential, StructureDefinition extension) {
    differential
        .at("Extension")
        .setShort(extension.getTitle())
        .setDefinition(extension.getDescription());
  }

  private static StructureDefinition start(
      String id, String url, String title, String... contexts) {
    StructureDefinition extension = Metadata.fill(new StructureDefinition(), id, url, title);
    extension.setFhirVersion(FHIRVersion._4_0_1);
    extension.setKind(StructureDefinitionKind.COMPLEXTYPE);
    extension.setAbstract(false);
    for (String context : contexts) {
      extension.addContext().setType(ExtensionContextType.ELEMENT).setExpression(context);
    }
    extension.setType("Extension");
    extension.setBaseDefinition("http://hl7.org/fhir/StructureDefinition/Extension");
    extension.setDerivation(TypeDerivationRule.CONSTRAINT);
    return extension;
  }
}
