package org.isopter.mapper.record.schema;

import com.networknt.schema.Error;
import com.networknt.schema.path.NodePath;
import java.util.List;
import java.util.Locale;
import org.isopter.model.value.Fault;
import tools.jackson.databind.JsonNode;

/** Says what a schema validator found in the four words of a fault. */
final class SchemaFault {

  private SchemaFault() {}

  static Fault of(Error error) {
    String path = path(error.getInstanceLocation());
    String property = error.getProperty();
    JsonNode wanted = error.getSchemaNode();
    return switch (error.getKeyword()) {
      case "additionalProperties" ->
          Fault.of(path, "the unknown key " + property, "a key that the format has");
      case "required", "dependentRequired" ->
          Fault.of(path, "no " + property, "the key " + property);
      case "enum" -> Fault.of(path, shown(error), "one of " + words(wanted));
      case "const" -> Fault.of(path, shown(error), wanted.toString());
      case "pattern" -> Fault.of(path, shown(error), "text of the form " + wanted.asString());
      case "type" -> Fault.of(path, shown(error), "the type " + wanted.asString());
      default -> Fault.of(path, shown(error), plain(error));
    };
  }

  private static String words(JsonNode list) {
    List<String> words = list.valueStream().map(JsonNode::asString).toList();
    return String.join(", ", words);
  }

  private static String shown(Error error) {
    JsonNode node = error.getInstanceNode();
    if (node.isObject()) {
      return "keys and values";
    }
    return node.isArray() ? "a list" : node.toString();
  }

  private static String plain(Error error) {
    return error.getMessage().toLowerCase(Locale.ROOT);
  }

  /** Writes the location as the reader does: keys with points, places in a list in brackets. */
  private static String path(NodePath location) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < location.getNameCount(); i++) {
      Object step = location.getElement(i);
      if (step instanceof Integer index) {
        path.append('[').append(index).append(']');
      } else {
        path.append(path.isEmpty() ? "" : ".").append(step);
      }
    }
    return path.toString();
  }
}
