package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The rules of a whole value: what must be there, its notation, and the rules of its parts. */
final class LayoutRules {

  private final Finding<?> finding;
  private final Map<String, Part<?, ?>> parts;
  private final List<Condition.Rule> rules = new ArrayList<>();

  private LayoutRules(Finding<?> finding) {
    this.finding = finding;
    this.parts = Parts.of(finding.layout());
  }

  static List<Condition.Rule> of(Finding<?> finding) {
    LayoutRules of = new LayoutRules(finding);
    of.present();
    of.requiredParts();
    finding.layout().choice().ifPresentOrElse(of::notations, of::singleValue);
    finding.layout().rules().forEach(of::rule);
    return List.copyOf(of.rules);
  }

  private void present() {
    if (hasValue()) {
      String human = finding.title() + " has a value, or the reason why there is none";
      add("-present", human, Tests.unlessAbsent(Tests.VALUE.exists()), Tests.VALUE);
    }
  }

  private boolean hasValue() {
    return finding.layout().variants().stream().anyMatch(v -> v.value().isPresent());
  }

  private void singleValue() {
    finding.layout().variants().stream()
        .flatMap(variant -> variant.value().stream())
        .flatMap(spec -> ValueRules.of(finding.id() + "-value", "the value", spec).stream())
        .forEach(rules::add);
  }

  private void requiredParts() {
    for (Part<?, ?> part : finding.layout().commonParts()) {
      if (part.isRequired()) {
        String human = finding.title() + " is given with its " + part.key();
        Test there = Tests.component(part.code()).exists();
        add(
            "-" + part.key() + "-required",
            human,
            Tests.unlessAbsent(there),
            Tests.COMPONENT_CODES);
      }
    }
  }

  private void notations(Choice<?, ?> choice) {
    Test there = notation(choice).exists();
    String human = finding.title() + " is given with its notation";
    add("-" + choice.key(), human, Tests.unlessAbsent(there), Tests.COMPONENT_CODES);
    finding.layout().variants().forEach(variant -> notation(choice, variant));
    ownParts(choice);
  }

  private void notation(Choice<?, ?> choice, Variant variant) {
    Concept notation = variant.notation().orElseThrow();
    Spec spec = variant.value().orElseThrow();
    ValueForm form = ValueForm.of(spec);
    String suffix = "-as-" + notation.word();
    String beside = "beside notation " + notation.word() + " the value ";
    Test noted = inNotation(choice, List.of(notation));
    ElementPath[] seen = {Tests.VALUE, notation(choice).to("value")};
    Test valued = new Test.Group(Tests.and(noted, Tests.VALUE.exists()));
    String wanted = beside + "is " + DatumTexts.wanted(spec);
    add(suffix, wanted, Tests.implies(valued, form.fits()), seen);
    Test fitting = new Test.Group(Tests.and(noted, form.fits()));
    form.range().ifPresent(in -> add(suffix + "-range", wanted, Tests.implies(fitting, in), seen));
    String digits = beside + "has " + ValueRules.decimals(spec);
    form.decimals()
        .ifPresent(few -> add(suffix + "-decimals", digits, Tests.implies(noted, few), seen));
  }

  private void ownParts(Choice<?, ?> choice) {
    Map<Part<?, ?>, List<Concept>> owners = new LinkedHashMap<>();
    for (Variant variant : finding.layout().variants()) {
      for (Part<?, ?> part : variant.specific()) {
        owners
            .computeIfAbsent(parts.get(part.key()), p -> new ArrayList<>())
            .add(variant.notation().orElseThrow());
      }
    }
    owners.forEach((part, notations) -> ownPart(choice, part, notations));
  }

  private void ownPart(Choice<?, ?> choice, Part<?, ?> part, List<Concept> notations) {
    String words = notations.stream().map(Concept::word).collect(Collectors.joining(" or "));
    Test there = Tests.component(part.code()).exists();
    add(
        "-" + part.key() + "-only",
        part.key() + " is given only beside notation " + words,
        Tests.implies(there, inNotation(choice, notations)),
        notation(choice).to("value"));
  }

  private void rule(Rule rule) {
    if (rule instanceof Rule.AnyOf anyOf && anyOf.parts().stream().anyMatch(this::isRequired)) {
      // Some part is there in any case.
      return;
    }
    ElementPath seen = rule instanceof Rule.OnlyWith ? Tests.VALUE : Tests.COMPONENT_CODES;
    add("-" + rule.id(), rule.sentence(), PartRules.of(rule, parts), seen);
  }

  private boolean isRequired(String key) {
    Part<?, ?> part = parts.get(key);
    return part != null && part.isRequired();
  }

  private static ElementPath notation(Choice<?, ?> choice) {
    return Tests.component(choice.code());
  }

  private static Test inNotation(Choice<?, ?> choice, List<Concept> notations) {
    return Tests.valueIn(notation(choice), notations.stream().<Code>map(Concept::code).toList());
  }

  private void add(String suffix, String human, Test test, ElementPath... seen) {
    rules.add(Condition.Rule.of(finding.id() + suffix, human, test, seen));
  }
}
