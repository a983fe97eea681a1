package org.isopter.profiles.artefact;

import java.util.List;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.profiles.artefact.invariant.Invariant;
import org.isopter.profiles.artefact.invariant.ValueInvariants;

/** Makes the profile of the panel that holds the findings of one examination together. */
final class ExaminationProfile {

  static final Answers SETTINGS = Answers.of(Setting.class);

  private ExaminationProfile() {}

  /** Returns what the profile states of the numbers that it holds. */
  static List<Invariant> invariants() {
    return Demographics.LAYOUT.commonParts().stream()
        .flatMap(part -> invariants(part).stream())
        .toList();
  }

  private static List<Invariant> invariants(Part<?, ?> part) {
    return ValueInvariants.of("examination-" + part.key(), part.key(), part.spec());
  }

  static StructureDefinition make() {
    StructureDefinition profile =
        BaseProfile.start(
            ExamCodes.PANEL.code(),
            ExamCodes.PANEL.display(),
            "http://hl7.org/fhir/StructureDefinition/Observation");
    profile.setDescription(
        "One eye examination: a panel that has the findings as members, says where it took place"
            + " and how old the person was, and has no value of its own.");
    Differential differential = new Differential(profile);
    BaseProfile.identified(differential);
    differential.at("Observation.code").setPattern(Differential.concept(ExamCodes.PANEL));
    differential.once("Observation.code.coding");
    BaseProfile.subjectAndTime(differential);
    differential.none("Observation.value[x]");
    differential.none("Observation.dataAbsentReason");
    differential.sliced("Observation.component", DiscriminatorType.PATTERN, "code");
    component(differential, "setting", ExamCodes.SETTING, new Spec.Coded(SETTINGS), List.of());
    for (Part<?, ?> part : Demographics.LAYOUT.commonParts()) {
      component(differential, part.key(), part.code(), part.spec(), invariants(part));
    }
    return profile;
  }

  private static void component(
      Differential differential, String name, Code code, Spec spec, List<Invariant> invariants) {
    String slice = "Observation.component:" + name;
    differential.state(differential.at(slice).setMin(0).setMax("1"), invariants);
    differential.at(slice + ".code").setPattern(Differential.concept(code));
    new ValueElements(differential).one(slice, spec, 1);
    differential.none(slice + ".dataAbsentReason");
  }
}
