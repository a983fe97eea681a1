package org.isopter.mapper.record.schema;

import java.util.List;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.value.Concept;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Says in JSON Schema, by adding to that of an entry, which parts of an entry go together. */
final class RuleSchema implements Rule.Cases<ObjectNode> {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final ObjectNode entry;
  private final Layout<?> layout;

  private RuleSchema(ObjectNode entry, Layout<?> layout) {
    this.entry = entry;
    this.layout = layout;
  }

  /** Adds the rules of a layout to the schema of its entries. */
  static void add(Layout<?> layout, ObjectNode entry) {
    RuleSchema schema = new RuleSchema(entry, layout);
    layout.rules().forEach(rule -> rule.fold(schema));
  }

  @Override
  public ObjectNode anyOf(Rule.AnyOf rule) {
    ArrayNode ways = entry.putArray("anyOf");
    rule.parts().forEach(part -> ways.add(required(part)));
    return entry;
  }

  @Override
  public ObjectNode together(Rule.Together rule) {
    // A part that is stated as absent does not need its fellow.
    if (!mayBeAbsent(rule.first()) && !mayBeAbsent(rule.second())) {
      ObjectNode dependent = entry.withObjectProperty("dependentRequired");
      dependent.withArrayProperty(rule.first()).add(rule.second());
      dependent.withArrayProperty(rule.second()).add(rule.first());
    }
    return entry;
  }

  private boolean mayBeAbsent(String key) {
    return layout.commonParts().stream()
        .anyMatch(part -> part.key().equals(key) && part.mayBeAbsent());
  }

  @Override
  public ObjectNode onlyWith(Rule.OnlyWith rule) {
    List<String> words = rule.values().stream().map(Concept::word).sorted().toList();
    ObjectNode then = NODES.objectNode();
    then.putObject("properties").set(Part.VALUE, SpecSchema.oneOf(words));
    return condition(required(rule.part()), then);
  }

  @Override
  public ObjectNode unitNeeds(Rule.UnitNeeds rule) {
    ObjectNode some = NODES.objectNode();
    ArrayNode users = some.putArray("anyOf");
    for (String part : rule.parts()) {
      ObjectNode user = required(part);
      user.putObject("properties").set(part, SpecSchema.pattern(" " + rule.unit().text() + "$"));
      users.add(user);
    }
    return condition(some, required(rule.needed()));
  }

  private ObjectNode condition(ObjectNode when, ObjectNode then) {
    ObjectNode condition = entry.withArrayProperty("allOf").addObject();
    condition.set("if", when);
    condition.set("then", then);
    return entry;
  }

  private static ObjectNode required(String key) {
    ObjectNode schema = NODES.objectNode();
    schema.putArray("required").add(key);
    return schema;
  }
}
