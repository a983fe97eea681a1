package org.isopter.mapper.record.tree;

import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes a tree as YAML the way a person would: what fits on a line stays on it, and quotes stand
 * only where YAML needs them.
 */
public final class YamlText {

  private static final int WIDTH = 100;
  private static final String STEP = "  ";

  private final StringBuilder out = new StringBuilder();

  private YamlText() {}

  /** Returns the tree as text with a line feed at the end. */
  public static String of(ObjectNode tree) {
    YamlText text = new YamlText();
    text.block(tree, "");
    return text.out.toString();
  }

  private void block(ObjectNode tree, String indent) {
    for (Map.Entry<String, JsonNode> member : tree.properties()) {
      out.append(indent).append(YamlScalar.of(member.getKey())).append(':');
      value(member.getValue(), indent, indent.length() + member.getKey().length() + 2);
    }
  }

  private void value(JsonNode node, String indent, int column) {
    Optional<String> line = inline(node).filter(text -> column + text.length() <= WIDTH);
    if (line.isPresent() || node.isEmpty()) {
      out.append(' ').append(line.orElseGet(() -> flow(node))).append('\n');
      return;
    }
    out.append('\n');
    if (node instanceof ArrayNode list) {
      list.forEach(item -> item(item, indent + STEP));
    } else {
      block((ObjectNode) node, indent + STEP);
    }
  }

  private void item(JsonNode node, String indent) {
    out.append(indent).append('-');
    Optional<String> line =
        inline(node).filter(text -> indent.length() + text.length() + 2 <= WIDTH);
    if (line.isPresent() || !(node instanceof ObjectNode tree)) {
      out.append(' ').append(line.orElseGet(() -> flow(node))).append('\n');
      return;
    }
    int start = out.length();
    block(tree, indent + STEP);
    // The first key stands behind the dash.
    out.replace(start, start + indent.length() + STEP.length(), " ");
  }

  /** Returns the node on one line where a person would write it so. */
  private static Optional<String> inline(JsonNode node) {
    return depth(node) <= 2 && !holdsTrees(node) ? Optional.of(flow(node)) : Optional.empty();
  }

  private static boolean holdsTrees(JsonNode node) {
    // Sites stand below one another, and so do the entries of a list.
    if (node instanceof ArrayNode list) {
      return list.valueStream().anyMatch(JsonNode::isContainer);
    }
    return node.has("right") || node.has("left") || node.has("both");
  }

  private static int depth(JsonNode node) {
    int deepest = 0;
    for (JsonNode child : node.values()) {
      deepest = Math.max(deepest, depth(child));
    }
    return node.isContainer() ? deepest + 1 : 0;
  }

  private static String flow(JsonNode node) {
    if (node instanceof ArrayNode list) {
      return list.isEmpty()
          ? "[]"
          : String.join(", ", list.valueStream().map(YamlText::flow).toList())
              .transform(inner -> "[" + inner + "]");
    }
    if (node instanceof ObjectNode tree) {
      return tree.isEmpty()
          ? "{}"
          : String.join(", ", tree.propertyStream().map(YamlText::pair).toList())
              .transform(inner -> "{ " + inner + " }");
    }
    return node.isString() ? YamlScalar.of(node.stringValue()) : YamlScalar.number(node);
  }

  private static String pair(Map.Entry<String, JsonNode> member) {
    return YamlScalar.of(member.getKey()) + ": " + flow(member.getValue());
  }
}
