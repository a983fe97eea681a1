package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;

/** Makes the elements of the observation in which a finding travels. */
public final class FindingElements {

  private final Finding<?> finding;

  private FindingElements(Finding<?> finding) {
    this.finding = finding;
  }

  /** Returns the elements in which a finding differs from {@link BaseElements}. */
  public static Element of(Finding<?> finding) {
    FindingElements of = new FindingElements(finding);
    return Element.of("Observation")
        .withAll(CodeRules.of(finding))
        .withAll(LayoutRules.of(finding))
        .holding(ObservationMember.elements(of::member));
  }

  private Element member(ObservationMember member) {
    return switch (member) {
      case CODE -> code(member);
      case VALUE -> value(member);
      case METHOD -> method(member);
      case COMPONENT -> component(member);
      case MODIFIER_EXTENSION,
          IDENTIFIER,
          STATUS,
          CATEGORY,
          SUBJECT,
          FOCUS,
          EFFECTIVE,
          PERFORMER,
          ABSENT_REASON,
          NOTE,
          BODY_SITE,
          SPECIMEN,
          DEVICE,
          HAS_MEMBER ->
          member.free();
    };
  }

  private Element code(ObservationMember member) {
    Codes codes = finding.codes();
    List<Element> slices = new ArrayList<>();
    codes.refined().forEach(refined -> slices.addAll(refined(refined)));
    codes.bySite().forEach((site, code) -> slices.add(coding(site.word(), code, 0)));
    for (int i = 0; i < codes.general().size(); i++) {
      String name = i == 0 ? "any-side" : "any-side-" + (i + 1);
      slices.add(coding(name, codes.general().get(i), 1));
    }
    Element coding =
        Element.of("coding")
            .occurs(codes.general().size(), Element.AS_BASE)
            .sliced(Slicing.open(Slicing.By.PATTERN, slices));
    return member.free().holding(coding);
  }

  private static List<Element> refined(Codes.Refined refined) {
    String name = refined.when().name();
    return refined.isSided()
        ? refined.bySite().entrySet().stream()
            .map(each -> coding(name + "-" + each.getKey().word(), each.getValue(), 0))
            .toList()
        : List.of(coding(name, refined.codes().get(0), 0));
  }

  private static Element coding(String slice, Code code, int least) {
    return Element.of(slice).occurs(least, 1).with(new Condition.Pattern(new Fixed.OfCoding(code)));
  }

  private Element value(ObservationMember member) {
    List<Spec> specs =
        finding.layout().variants().stream().flatMap(v -> v.value().stream()).toList();
    if (specs.isEmpty()) {
      return member.none();
    }
    return specs.size() == 1
        ? ValueElements.one(specs.get(0), 0)
        : ValueElements.choice(specs, Lists.ofValue(finding));
  }

  private Element method(ObservationMember member) {
    return finding
        .methods()
        .map(list -> member.free().with(Lists.of(list).orOthers()).support())
        .orElseGet(member::none);
  }

  private Element component(ObservationMember member) {
    Optional<? extends Choice<?, ?>> choice = finding.layout().choice();
    List<Element> slices =
        Stream.concat(
                choice.stream().map(FindingElements::notation),
                Parts.of(finding.layout()).values().stream().map(this::part))
            .toList();
    Element component = member.free();
    return slices.isEmpty() ? component : component.sliced(Slicing.open(Slicing.By.CODE, slices));
  }

  private static Element notation(Choice<?, ?> choice) {
    return component(choice.key(), choice.code())
        .holding(
            ValueElements.one(new Spec.Coded(choice.notations()), 1),
            Element.none("dataAbsentReason"));
  }

  private Element part(Part<?, ?> part) {
    String prefix = finding.id() + "-" + part.key();
    Element component =
        component(part.key(), part.code())
            .withAll(ValueRules.of(prefix, part.key(), part.spec()))
            .holding(ValueElements.part(part.spec(), part.mayBeAbsent() ? 0 : 1));
    Element reason = Element.of("dataAbsentReason").with(Lists.ABSENT_REASON.orOthers()).support();
    return part.mayBeAbsent()
        ? component.with(outcome(prefix, part)).holding(reason)
        : component.holding(Element.none("dataAbsentReason"));
  }

  /** Returns a slice of the components: that under a code. */
  static Element component(String name, Code code) {
    return Element.of(name)
        .occurs(0, 1)
        .support()
        .holding(
            Element.of("code").with(new Condition.Pattern(new Fixed.OfConcept(code))).support());
  }

  private static Condition.Rule outcome(String prefix, Part<?, ?> part) {
    return Condition.Rule.of(
        prefix + "-outcome",
        part.key() + " has a value or the reason why there is none, and not both",
        new Test.Same(Tests.VALUE.exists(), ElementPath.of("dataAbsentReason").exists(), false),
        Tests.VALUE,
        ElementPath.of("dataAbsentReason", "coding"));
  }
}
