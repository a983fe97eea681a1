package org.isopter.model.wire;

import java.util.List;
import org.isopter.model.value.Code;

/** What every finding has in common, and what it shares with the panel of the visit. */
public final class BaseElements {

  /** The id of the profile of what every finding has in common. */
  public static final String ID = "isopter-finding";

  /** The category of every observation of ours. */
  public static final Code EXAM =
      new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam");

  /** The type of the time at which a finding was seen. */
  public static final String TIME = "dateTime";

  private static final Condition.Rule ABSENT =
      Condition.Rule.of(
          ID + "-absent",
          "a finding without a value has a reason and no components",
          Tests.implies(
              ElementPath.of("dataAbsentReason").exists(),
              new Test.Missing(ElementPath.of("component"))),
          Tests.COMPONENT_CODES);

  private BaseElements() {}

  /** Returns the elements that every finding has. */
  public static Element make() {
    return Element.of("Observation")
        .with(ABSENT)
        .holding(
            ObservationMember.elements(BaseElements::of).stream()
                .filter(Element::isStated)
                .toList());
  }

  private static Element of(ObservationMember member) {
    return switch (member) {
      case MODIFIER_EXTENSION, IDENTIFIER, STATUS, CATEGORY, SUBJECT, FOCUS, EFFECTIVE, PERFORMER ->
          common(member);
      case VALUE -> member.free().support();
      case ABSENT_REASON -> member.free().with(Lists.ABSENT_REASON.orOthers()).support();
      case BODY_SITE -> member.once().with(Lists.EYE_SITE).support();
      case SPECIMEN, HAS_MEMBER -> member.none();
      case CODE, NOTE, METHOD, DEVICE, COMPONENT -> member.free();
    };
  }

  /** Returns what findings and the panel say alike. */
  static Element common(ObservationMember member) {
    return switch (member) {
      case MODIFIER_EXTENSION, FOCUS -> member.none();
      case IDENTIFIER -> member.free().occurs(1, Element.AS_BASE).support();
      case STATUS -> member.free().with(Lists.STATUS).support();
      case CATEGORY ->
          member.free().occurs(1, Element.AS_BASE).sliced(Slicing.open(Slicing.By.PATTERN, exam()));
      case SUBJECT -> member.once().support();
      case EFFECTIVE -> member.once().with(new Condition.OneOfTypes(List.of(TIME))).support();
      case PERFORMER -> member.free().support();
      case CODE,
          VALUE,
          ABSENT_REASON,
          NOTE,
          BODY_SITE,
          METHOD,
          SPECIMEN,
          DEVICE,
          HAS_MEMBER,
          COMPONENT ->
          member.free();
    };
  }

  private static List<Element> exam() {
    return List.of(
        Element.once("exam").with(new Condition.Pattern(new Fixed.OfConcept(EXAM))).support());
  }
}
