package org.isopter.profiles.artefact.invariant;

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

/**
 * The invariants of a whole value: what must be there, its notation, and the rules of its parts.
 */
public final class LayoutInvariants {

  private final Finding<?> finding;
  private final Map<String, Part<?, ?>> parts;
  private final List<Invariant> invariants = new ArrayList<>();

  private LayoutInvariants(Finding<?> finding) {
    this.finding = finding;
    this.parts = Parts.of(finding.layout());
  }

  public static List<Invariant> of(Finding<?> finding) {
    LayoutInvariants of = new LayoutInvariants(finding);
    of.present();
    of.requiredParts();
    finding.layout().choice().ifPresentOrElse(of::notations, of::singleValue);
    finding.layout().rules().forEach(of::rule);
    return List.copyOf(of.invariants);
  }

  private void present() {
    if (hasValue()) {
      String human = finding.title() + " has a value, or the reason why there is none";
      add("-present", human, Paths.unlessAbsent("value.exists()"), "value");
    }
  }

  private boolean hasValue() {
    return finding.layout().variants().stream().anyMatch(v -> v.value().isPresent());
  }

  private void singleValue() {
    finding.layout().variants().stream()
        .flatMap(variant -> variant.value().stream())
        .flatMap(spec -> ValueInvariants.of(finding.id() + "-value", "the value", spec).stream())
        .forEach(invariants::add);
  }

  private void requiredParts() {
    for (Part<?, ?> part : finding.layout().commonParts()) {
      if (part.isRequired()) {
        String human = finding.title() + " is given with its " + part.key();
        String there = Paths.component(part.code()) + ".exists()";
        add(
            "-" + part.key() + "-required",
            human,
            Paths.unlessAbsent(there),
            "component.code.coding");
      }
    }
  }

  private void notations(Choice<?, ?> choice) {
    String there = Paths.component(choice.code()) + ".exists()";
    String human = finding.title() + " is given with its notation";
    add("-" + choice.key(), human, Paths.unlessAbsent(there), "component.code.coding");
    finding.layout().variants().forEach(variant -> notation(choice, variant));
    ownParts(choice);
  }

  private void notation(Choice<?, ?> choice, Variant variant) {
    Concept notation = variant.notation().orElseThrow();
    Spec spec = variant.value().orElseThrow();
    ValueKind kind = ValueKind.of(spec);
    String suffix = "-as-" + notation.word();
    String when = inNotation(choice, List.of(notation)) + " implies ";
    String whenThere =
        "(" + inNotation(choice, List.of(notation)) + " and value.exists()) implies ";
    String human = "beside notation " + notation.word() + " the value is ";
    String[] seen = {"value", notation(choice) + ".value"};
    add(suffix, human + DatumTexts.wanted(spec), whenThere + kind.fits(), seen);
    if (!kind.range().isEmpty()) {
      String whenKind = inNotation(choice, List.of(notation)) + " and " + kind.fits();
      add(
          suffix + "-range",
          human + DatumTexts.wanted(spec),
          "(" + whenKind + ") implies " + kind.range(),
          seen);
    }
    if (!kind.decimals().isEmpty()) {
      String digits = "beside notation " + notation.word() + " the value has ";
      add(
          suffix + "-decimals",
          digits + ValueInvariants.decimals(spec),
          when + kind.decimals(),
          seen);
    }
  }

  private void ownParts(Choice<?, ?> choice) {
    Map<Part<?, ?>, List<Concept>> owners = new LinkedHashMap<>();
    for (Variant variant : finding.layout().variants()) {
      for (Part<?, ?> part : variant.own()) {
        owners
            .computeIfAbsent(parts.get(part.key()), p -> new ArrayList<>())
            .add(variant.notation().orElseThrow());
      }
    }
    owners.forEach((part, notations) -> ownPart(choice, part, notations));
  }

  private void ownPart(Choice<?, ?> choice, Part<?, ?> part, List<Concept> notations) {
    String words = notations.stream().map(Concept::word).collect(Collectors.joining(" or "));
    String there = Paths.component(part.code()) + ".exists()";
    add(
        "-" + part.key() + "-only",
        part.key() + " is given only beside notation " + words,
        there + " implies " + inNotation(choice, notations),
        notation(choice) + ".value");
  }

  private void rule(Rule rule) {
    if (rule instanceof Rule.AnyOf anyOf && anyOf.parts().stream().anyMatch(this::isRequired)) {
      // Some part is there in any case.
      return;
    }
    RuleText text = RuleText.of(rule, parts);
    add("-" + rule.id(), rule.sentence(), text.expression(), text.seen().toArray(String[]::new));
  }

  private boolean isRequired(String key) {
    Part<?, ?> part = parts.get(key);
    return part != null && part.isRequired();
  }

  private static String notation(Choice<?, ?> choice) {
    return Paths.component(choice.code());
  }

  private static String inNotation(Choice<?, ?> choice, List<Concept> notations) {
    List<Code> codes = notations.stream().map(Concept::code).toList();
    return notation(choice) + "." + Paths.valueIn(codes);
  }

  private void add(String suffix, String human, String expression, String... seen) {
    invariants.add(Invariant.of(finding.id() + suffix, human, expression, seen));
  }
}
