package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;

/** The panel that holds the findings of one examination together. */
public final class ExaminationElements {

  /** Where an examination may take place. */
  public static final Answers SETTINGS = Answers.of(Setting.class);

  private ExaminationElements() {}

  /** Returns the elements of the panel. */
  public static Element make() {
    return Element.of("Observation").holding(ObservationMember.elements(ExaminationElements::of));
  }

  private static Element of(ObservationMember member) {
    return switch (member) {
      case CODE ->
          member.free().with(new Condition.Pattern(new Fixed.OfConcept(ExamCodes.PANEL))).support();
      case VALUE, ABSENT_REASON -> member.none();
      case HAS_MEMBER -> member.free().support();
      case COMPONENT -> member.free().sliced(Slicing.open(Slicing.By.CODE, components()));
      case MODIFIER_EXTENSION,
          IDENTIFIER,
          STATUS,
          CATEGORY,
          SUBJECT,
          FOCUS,
          EFFECTIVE,
          PERFORMER,
          NOTE,
          BODY_SITE,
          METHOD,
          SPECIMEN,
          DEVICE ->
          BaseElements.common(member);
    };
  }

  private static List<Element> components() {
    List<Element> components = new ArrayList<>();
    components.add(component("setting", ExamCodes.SETTING, new Spec.Coded(SETTINGS), List.of()));
    for (Part<?, ?> part : Demographics.LAYOUT.commonParts()) {
      List<Condition.Rule> rules =
          ValueRules.of("examination-" + part.key(), part.key(), part.spec());
      components.add(component(part.key(), part.code(), part.spec(), rules));
    }
    return components;
  }

  private static Element component(String name, Code code, Spec spec, List<Condition.Rule> rules) {
    return FindingElements.component(name, code)
        .withAll(rules)
        .holding(ValueElements.part(spec, 1), Element.none("dataAbsentReason"));
  }
}
