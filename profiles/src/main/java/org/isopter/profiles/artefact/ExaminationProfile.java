package org.isopter.profiles.artefact;

import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Spec;

/** Makes the profile of the panel that holds the findings of one examination together. */
final class ExaminationProfile {

  static final Answers SETTINGS = Answers.of(Setting.class);

  private ExaminationProfile() {}

  static StructureDefinition make() {
    StructureDefinition profile =
        BaseProfile.start(
            ExamCodes.PANEL.code(),
            ExamCodes.PANEL.display(),
            "http://hl7.org/fhir/StructureDefinition/Observation");
    profile.setDescription(
        "One eye examination: a panel that has the findings as members, says where it took place,"
            + " and has no value of its own.");
    Differential differential = new Differential(profile);
    BaseProfile.identified(differential);
    differential.at("Observation.code").setPattern(Differential.concept(ExamCodes.PANEL));
    differential.once("Observation.code.coding");
    BaseProfile.subjectAndTime(differential);
    differential.none("Observation.value[x]");
    differential.none("Observation.dataAbsentReason");
    setting(differential);
    return profile;
  }

  private static void setting(Differential differential) {
    String setting = "Observation.component:setting";
    differential.sliced("Observation.component", DiscriminatorType.PATTERN, "code");
    differential.at(setting).setMin(0).setMax("1");
    differential.at(setting + ".code").setPattern(Differential.concept(ExamCodes.SETTING));
    new ValueElements(differential).one(setting, new Spec.Coded(SETTINGS), 1);
    differential.none(setting + ".dataAbsentReason");
  }
}
