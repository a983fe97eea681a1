package org.isopter.mapper.fhir;

import java.util.List;
import org.isopter.model.value.Canonical;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;

/** Bundles that were written when our addresses had another name. */
final class FormerAddresses {

  private FormerAddresses() {}

  /** Gives each address in a tree the name that it has now; the tree itself is changed. */
  static void replace(JsonNode tree) {
    if (tree instanceof ObjectNode object) {
      for (String name : List.copyOf(object.propertyNames())) {
        object.set(name, replaced(object.get(name)));
      }
    } else if (tree instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        list.set(i, replaced(list.get(i)));
      }
    }
  }

  private static JsonNode replaced(JsonNode value) {
    if (value instanceof StringNode text) {
      return StringNode.valueOf(Canonical.current(text.stringValue()));
    }
    replace(value);
    return value;
  }
}
