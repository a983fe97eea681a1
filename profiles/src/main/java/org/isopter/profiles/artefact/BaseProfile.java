package org.isopter.profiles.artefact;

import java.util.List;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.ElementDefinition.SlicingRules;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.StructureDefinition.StructureDefinitionKind;
import org.hl7.fhir.r4.model.StructureDefinition.TypeDerivationRule;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.profiles.artefact.invariant.Invariant;

/** The profile of what every finding has in common, and what it shares with that of the visit. */
final class BaseProfile {

  /** The id of the profile. */
  static final String ID = "isopter-finding";

  static final List<Invariant> INVARIANTS =
      List.of(
          Invariant.of(
              ID + "-absent",
              "a finding without a value has a reason and no components",
              "dataAbsentReason.exists() implies component.empty()",
              "component.code.coding"));

  private static final Code EXAM =
      new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam");

  private BaseProfile() {}

  static StructureDefinition make() {
    StructureDefinition profile =
        start(ID, "Eye examination finding", "http://hl7.org/fhir/StructureDefinition/Observation");
    profile.setAbstract(true);
    profile.setDescription(
        "What every finding of an eye examination has in common: it is of category exam, names the"
            + " eye, the person and the time, and has a value or the reason why there is none.");
    Differential differential = new Differential(profile);
    differential.state(differential.at("Observation"), INVARIANTS);
    identified(differential);
    subjectAndTime(differential);
    ElementDefinition reason = differential.at("Observation.dataAbsentReason");
    Differential.bind(reason, ValueSets.ABSENT_REASON);
    differential.oneCoding("Observation.dataAbsentReason");
    Differential.bind(differential.once("Observation.bodySite"), ValueSets.EYE_SITE);
    differential.oneCoding("Observation.bodySite");
    differential.none("Observation.specimen");
    differential.none("Observation.hasMember");
    return profile;
  }

  /** Returns a profile without elements. */
  static StructureDefinition start(String id, String title, String base) {
    StructureDefinition profile =
        Metadata.fill(new StructureDefinition(), id, Canonical.profile(id), title);
    profile.setFhirVersion(FHIRVersion._4_0_1);
    profile.setKind(StructureDefinitionKind.RESOURCE);
    profile.setAbstract(false);
    profile.setType("Observation");
    profile.setBaseDefinition(base);
    profile.setDerivation(TypeDerivationRule.CONSTRAINT);
    return profile;
  }

  /** Adds what comes before the code. */
  static void identified(Differential differential) {
    differential.none("Observation.modifierExtension");
    differential.at("Observation.identifier").setMin(1);
    Differential.bind(differential.at("Observation.status"), ValueSets.STATUS);
    ElementDefinition category = differential.at("Observation.category").setMin(1);
    category.getSlicing().setRules(SlicingRules.OPEN).setOrdered(false);
    category.getSlicing().addDiscriminator().setType(DiscriminatorType.PATTERN).setPath("$this");
    differential.once("Observation.category:exam").setPattern(Differential.concept(EXAM));
  }

  /** Adds what comes between the code and the value. */
  static void subjectAndTime(Differential differential) {
    differential.once("Observation.subject");
    differential.none("Observation.focus");
    differential.once("Observation.effective[x]").addType().setCode("dateTime");
  }
}
