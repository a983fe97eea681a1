package org.isopter.mapper.json;

import java.math.BigDecimal;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Turns {@link Raw} values into trees of the JSON library; numbers keep their digits. */
public final class RawTree {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private RawTree() {}

  /** Returns an object as a tree of Jackson, its numbers to the digit. */
  public static ObjectNode of(Raw.Obj object) {
    ObjectNode node = NODES.objectNode();
    object.members().forEach((name, value) -> node.set(name, of(value)));
    return node;
  }

  private static JsonNode of(Raw value) {
    if (value instanceof Raw.Obj object) {
      return of(object);
    }
    if (value instanceof Raw.Arr list) {
      ArrayNode node = NODES.arrayNode(list.items().size());
      list.items().forEach(item -> node.add(of(item)));
      return node;
    }
    return leaf((Raw.Leaf) value);
  }

  private static JsonNode leaf(Raw.Leaf leaf) {
    return switch (leaf.kind()) {
      case STRING -> NODES.stringNode(leaf.text());
      case NUMBER -> NODES.numberNode(new BigDecimal(leaf.text()));
      case TRUTH -> NODES.booleanNode(Boolean.parseBoolean(leaf.text()));
      case NULL -> NODES.nullNode();
    };
  }
}
