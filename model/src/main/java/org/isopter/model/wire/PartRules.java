package org.isopter.model.wire;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Makes tests on the observation of the rules between parts. */
final class PartRules implements Rule.Cases<Test> {

  private final Map<String, Part<?, ?>> parts;

  private PartRules(Map<String, Part<?, ?>> parts) {
    this.parts = parts;
  }

  static Test of(Rule rule, Map<String, Part<?, ?>> parts) {
    return rule.fold(new PartRules(parts));
  }

  @Override
  public Test together(Rule.Together rule) {
    return new Test.Same(found(rule.first()), found(rule.second()), true);
  }

  @Override
  public Test onlyWith(Rule.OnlyWith rule) {
    // A set has no order of its own, and the artefact must come out the same every time.
    List<Code> codes =
        rule.values().stream()
            .<Code>map(Concept::code)
            .sorted(Comparator.comparing(Code::token))
            .toList();
    return Tests.implies(there(rule.part()), Tests.valueIn(ElementPath.THIS, codes));
  }

  @Override
  public Test unitNeeds(Rule.UnitNeeds rule) {
    Test unit = Tests.isIn(rule.unit());
    List<Test> used =
        rule.parts().stream()
            .map(
                part ->
                    component(part)
                        .to("value")
                        .ofType(ValueType.QUANTITY.type())
                        .where(unit)
                        .exists())
            .toList();
    return Tests.implies(new Test.Group(new Test.Or(used)), found(rule.needed()));
  }

  @Override
  public Test anyOf(Rule.AnyOf rule) {
    return Tests.unlessAbsent(rule.parts().stream().map(this::there).toArray(Test[]::new));
  }

  private Test there(String key) {
    return component(key).exists();
  }

  private Test found(String key) {
    return component(key).to("value").exists();
  }

  private ElementPath component(String key) {
    return Tests.component(Objects.requireNonNull(parts.get(key)).code());
  }
}
