package org.isopter.profiles.artefact.invariant;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/**
 * A rule between parts as FHIRPath on the observation.
 *
 * @param expression the condition
 * @param seen the paths of what a message must show
 */
record RuleText(String expression, List<String> seen) {

  static RuleText of(Rule rule, Map<String, Part<?, ?>> parts) {
    Writer writer = new Writer(parts);
    if (rule instanceof Rule.Together together) {
      return writer.together(together);
    }
    if (rule instanceof Rule.OnlyWith only) {
      return writer.onlyWith(only);
    }
    if (rule instanceof Rule.UnitNeeds needs) {
      return writer.unitNeeds(needs);
    }
    return writer.anyOf((Rule.AnyOf) rule);
  }

  private record Writer(Map<String, Part<?, ?>> parts) {

    RuleText together(Rule.Together rule) {
      String first = found(rule.first());
      String second = found(rule.second());
      return new RuleText(first + " = " + second, List.of("component.code.coding"));
    }

    RuleText onlyWith(Rule.OnlyWith rule) {
      // A set has no order of its own, and the artefact must come out the same every time.
      List<Code> codes =
          rule.values().stream()
              .map(Concept::code)
              .sorted(java.util.Comparator.comparing(Code::token))
              .toList();
      return new RuleText(
          there(rule.part()) + " implies " + Paths.valueIn(codes), List.of("value"));
    }

    RuleText unitNeeds(Rule.UnitNeeds rule) {
      String inUnit = ".value.ofType(Quantity).where(" + ValueKind.isIn(rule.unit()) + ").exists()";
      String used =
          rule.parts().stream()
              .map(part -> component(part) + inUnit)
              .collect(Collectors.joining(" or ", "(", ")"));
      return new RuleText(
          used + " implies " + found(rule.needed()), List.of("component.code.coding"));
    }

    RuleText anyOf(Rule.AnyOf rule) {
      String any = rule.parts().stream().map(this::there).collect(Collectors.joining(" or "));
      return new RuleText(Paths.unlessAbsent(any), List.of("component.code.coding"));
    }

    private String there(String key) {
      return component(key) + ".exists()";
    }

    private String found(String key) {
      return component(key) + ".value.exists()";
    }

    private String component(String key) {
      return Paths.component(java.util.Objects.requireNonNull(parts.get(key)).code());
    }
  }
}
