package org.isopter.mapper.record.schema;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Says in JSON Schema how a single value is written. */
final class SpecSchema implements Spec.Cases<ObjectNode> {

  static final SpecSchema INSTANCE = new SpecSchema();

  /** Text without white space or control characters at either end. */
  private static final String STRIPPED = "^[^\\u0000-\\u0020](?:[\\s\\S]*[^\\u0000-\\u0020])?$";

  private static final String SPECIAL = "\\^$.|?*+()[]{}/";

  private SpecSchema() {}

  @Override
  public ObjectNode measure(Spec.Measure spec) {
    List<ObjectNode> forms = new ArrayList<>();
    List<String> units = new ArrayList<>();
    for (Span span : spec.spans()) {
      if (span.unit().text().isEmpty()) {
        forms.add(type("number").put("minimum", span.least()).put("maximum", span.most()));
      } else {
        units.add(escape(span.unit().text()));
      }
    }
    if (!units.isEmpty()) {
      String digits = "^[+-]?\\d+" + decimals(spec.decimals());
      forms.add(0, pattern(digits + " (?:" + String.join("|", units) + ")$"));
    }
    return anyOf(forms);
  }

  @Override
  public ObjectNode count(Spec.Count spec) {
    return type("integer").put("minimum", spec.least()).put("maximum", spec.most());
  }

  @Override
  public ObjectNode coded(Spec.Coded spec) {
    return words(spec.answers());
  }

  @Override
  public ObjectNode truth(Spec.Truth spec) {
    return type("boolean");
  }

  @Override
  public ObjectNode text(Spec.Text spec) {
    return text().put("maxLength", spec.longest());
  }

  @Override
  public ObjectNode ratio(Spec.Ratio spec) {
    String number = "[+-]?\\d+" + decimals(spec.decimals());
    String unit = spec.unit().text();
    String behind = unit.isEmpty() ? "" : " " + escape(unit);
    return pattern("^" + number + "/" + number + behind + "$");
  }

  static ObjectNode text() {
    return pattern(STRIPPED);
  }

  static ObjectNode pattern(String pattern) {
    return type("string").put("pattern", pattern);
  }

  static ObjectNode type(String type) {
    return JsonNodeFactory.instance.objectNode().put("type", type);
  }

  static ObjectNode words(Answers answers) {
    return oneOf(answers.concepts().stream().map(Concept::word).toList());
  }

  static ObjectNode oneOf(List<String> words) {
    ObjectNode schema = JsonNodeFactory.instance.objectNode();
    ArrayNode list = schema.putArray("enum");
    words.forEach(list::add);
    return schema;
  }

  private static ObjectNode anyOf(List<ObjectNode> forms) {
    if (forms.size() == 1) {
      return forms.get(0);
    }
    ObjectNode schema = JsonNodeFactory.instance.objectNode();
    schema.putArray("anyOf").addAll(forms);
    return schema;
  }

  private static String decimals(int most) {
    return most == 0 ? "" : "(?:\\.\\d{1," + most + "})?";
  }

  private static String escape(String text) {
    StringBuilder escaped = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      escaped.append(SPECIAL.indexOf(c) >= 0 ? "\\" : "").append(c);
    }
    return escaped.toString();
  }
}
