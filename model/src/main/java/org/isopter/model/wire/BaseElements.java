package org.isopter.model.wire;

import java.util.List;
import org.isopter.model.value.Code;

/** What every finding has in common, and what it shares with the panel of the visit. */
public final class BaseElements {

  /** The id of the profile of what every finding has in common. */
  public static final String ID = "isopter-finding";

  private static final Code EXAM =
      new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam");

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
        .holding(identified())
        .holding(subjectAndTime())
        .holding(
            Element.of("performer").support(),
            Element.of("value[x]").support(),
            Element.of("dataAbsentReason").with(Lists.ABSENT_REASON.orOthers()).support(),
            Element.once("bodySite").with(Lists.EYE_SITE).support(),
            Element.none("specimen"),
            Element.none("hasMember"));
  }

  /** Returns what comes before the code. */
  static List<Element> identified() {
    Element exam =
        Element.once("exam").with(new Condition.Pattern(new Fixed.OfConcept(EXAM))).support();
    return List.of(
        Element.none("modifierExtension"),
        Element.of("identifier").occurs(1, Element.AS_BASE).support(),
        Element.of("status").with(Lists.STATUS).support(),
        Element.of("category")
            .occurs(1, Element.AS_BASE)
            .sliced(Slicing.open(Slicing.By.PATTERN, List.of(exam))));
  }

  /** Returns what comes between the code and the value. */
  static List<Element> subjectAndTime() {
    return List.of(
        Element.once("subject").support(),
        Element.none("focus"),
        Element.once("effective[x]").with(new Condition.OneOfTypes(List.of("dateTime"))).support());
  }
}
