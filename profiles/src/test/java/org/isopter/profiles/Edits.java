package org.isopter.profiles;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Every resource that differs from another at one place: removed, changed, joined, or added. */
final class Edits {

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final JsonNode root;
  private final List<Edit> found = new ArrayList<>();

  /**
   * A resource that differs at one place.
   *
   * @param what what was done, and where as a JSON pointer
   * @param json the resource
   */
  record Edit(String what, String json) {}

  private Edits(String json) {
    this.root = JSON.readTree(json);
  }

  static List<Edit> of(String json) {
    Edits edits = new Edits(json);
    edits.below("");
    return edits.found;
  }

  private void below(String at) {
    JsonNode node = root.at(at);
    if (node instanceof ObjectNode object) {
      edit("add to", at, whole -> ((ObjectNode) whole.at(at)).put("text2", "x"));
      edit("extend", at, whole -> extend((ObjectNode) whole.at(at)));
      object.propertyNames().forEach(name -> member(at, name));
    } else if (node instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        item(at, i);
      }
    }
  }

  private void member(String at, String name) {
    String path = at + "/" + name;
    edit("remove", path, whole -> ((ObjectNode) whole.at(at)).remove(name));
    JsonNode value = root.at(path);
    if (value.isValueNode()) {
      other(value)
          .forEach(
              each ->
                  edit("set " + each, path, whole -> ((ObjectNode) whole.at(at)).set(name, each)));
    }
    below(path);
  }

  private void item(String at, int index) {
    String path = at + "/" + index;
    edit("remove", path, whole -> ((ArrayNode) whole.at(at)).remove(index));
    edit("twice", path, whole -> twice((ArrayNode) whole.at(at), index));
    below(path);
  }

  private static void twice(ArrayNode array, int index) {
    array.add(array.get(index).deepCopy());
  }

  private static void extend(ObjectNode object) {
    ObjectNode extension = object.putArray("extension").addObject();
    extension.put("url", "https://elsewhere.example/x");
    extension.put("valueString", "x");
  }

  /** Returns other values of the same and of another kind. */
  private static List<JsonNode> other(JsonNode value) {
    var nodes = JSON.getNodeFactory();
    if (value.isNumber()) {
      return List.of(
          JSON.readTree("99999"),
          JSON.readTree("-1"),
          nodes.numberNode(value.decimalValue().setScale(6)),
          nodes.stringNode("7"));
    }
    if (value.isBoolean()) {
      return List.of(nodes.booleanNode(!value.asBoolean()), nodes.stringNode("true"));
    }
    String text = value.asString();
    return List.of(
        nodes.stringNode(text + "x"),
        nodes.stringNode(""),
        nodes.stringNode(" " + text),
        nodes.numberNode(1));
  }

  private void edit(String what, String at, Consumer<JsonNode> change) {
    JsonNode copy = root.deepCopy();
    change.accept(copy);
    found.add(new Edit(what + " " + at, copy.toString()));
  }
}
