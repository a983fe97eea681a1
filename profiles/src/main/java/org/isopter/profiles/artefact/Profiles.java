package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.StructureDefinition.StructureDefinitionKind;
import org.hl7.fhir.r4.model.StructureDefinition.TypeDerivationRule;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.ExaminationElements;
import org.isopter.model.wire.FindingElements;

/** Makes the profiles and the extensions, and collects the rules that the profiles state. */
final class Profiles {

  private static final String OBSERVATION = "http://hl7.org/fhir/StructureDefinition/Observation";

  private final List<StructureDefinition> all = new ArrayList<>();
  private final Map<String, Condition.Rule> rules = new LinkedHashMap<>();

  Profiles(Catalogue catalogue) {
    base();
    examination();
    all.addAll(CarriedExtensions.make());
    catalogue.all().forEach(this::add);
  }

  /** Returns what all findings share, the panel, the extensions, and each finding. */
  List<StructureDefinition> all() {
    return List.copyOf(all);
  }

  /** Returns the rules by their key. */
  Map<String, Condition.Rule> rules() {
    return Map.copyOf(rules);
  }

  private void base() {
    StructureDefinition profile = start(BaseElements.ID, "Eye examination finding", OBSERVATION);
    profile.setAbstract(true);
    profile.setDescription(
        "What every finding of an eye examination has in common: it is of category exam, names the"
            + " eye, the person and the time, and has a value or the reason why there is none.");
    add(profile, BaseElements.make());
  }

  private void examination() {
    StructureDefinition profile =
        start(ExamCodes.PANEL.code(), ExamCodes.PANEL.display(), OBSERVATION);
    profile.setDescription(
        "One eye examination: a panel that has the findings as members, says where it took place"
            + " and how old the person was, and has no value of its own.");
    add(profile, ExaminationElements.make());
  }

  private void add(Finding<?> finding) {
    StructureDefinition profile =
        start(finding.id(), finding.title(), Canonical.profile(BaseElements.ID));
    profile.setDescription((finding.title() + ". " + finding.note()).strip());
    profile.setCopyright(Metadata.notices(finding.codes().all()));
    add(profile, FindingElements.of(finding));
  }

  private void add(StructureDefinition profile, Element root) {
    new Differential(profile).add(root);
    all.add(profile);
    root.rules().forEach(this::add);
  }

  private void add(Condition.Rule rule) {
    if (rules.putIfAbsent(rule.key(), rule) != null) {
      throw new IllegalArgumentException("two invariants are called " + rule.key());
    }
  }

  /** Returns a profile without elements. */
  private static StructureDefinition start(String id, String title, String base) {
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
}
