package org.isopter.mapper.record;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** One random slip somewhere in a record: a lost, renamed, doubled or twisted key or value. */
public final class Mutation {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private static final List<JsonNode> ODD =
      List.of(
          NODES.numberNode(14),
          NODES.numberNode(new java.math.BigDecimal("0.5")),
          NODES.stringNode(""),
          NODES.stringNode("14 mm Hg"),
          NODES.stringNode("14 mmHg"),
          NODES.stringNode("-999.5 D"),
          NODES.stringNode("6/20"),
          NODES.stringNode("0.5"),
          NODES.stringNode("full"),
          NODES.stringNode(" 6/9 "),
          NODES.stringNode("cf 1m"),
          NODES.stringNode("6/9 m"),
          NODES.stringNode("+0.3 logmar"),
          NODES.stringNode("2026-03-02T09:30+01:00"),
          NODES.stringNode("2026-13-02T09:30:00Z"),
          NODES.booleanNode(true),
          NODES.nullNode(),
          NODES.arrayNode(),
          NODES.objectNode(),
          NODES.arrayNode().add("x"),
          NODES.objectNode().put("absent", "not-done"),
          NODES.objectNode().put("absent", "forgotten"));

  private final SplittableRandom random;

  public Mutation(SplittableRandom random) {
    this.random = random;
  }

  public void change(ObjectNode tree) {
    List<ObjectNode> objects = new ArrayList<>();
    gather(tree, objects);
    ObjectNode target = pick(objects);
    List<String> keys = new ArrayList<>(target.propertyNames());
    String key = keys.isEmpty() ? "none" : pick(keys);
    JsonNode value = target.get(key);
    switch (random.nextInt(7)) {
      case 0 -> target.remove(key);
      case 1 -> target.set(key + "s", target.remove(key) == null ? NODES.nullNode() : value);
      case 2 -> target.put("method", "by-hand");
      case 3 -> target.set(key, NODES.arrayNode().add(value).add(value));
      case 4 -> twist(target, key);
      default -> target.set(key, pick(ODD));
    }
  }

  private void twist(ObjectNode target, String key) {
    JsonNode value = target.get(key);
    if (value != null && value.isString()) {
      String text = value.stringValue();
      int at = random.nextInt(text.length());
      target.put(
          key, text.substring(0, at) + pick(List.of("", "x", " ", "9")) + text.substring(at));
    } else {
      target.set(key, pick(ODD));
    }
  }

  private static void gather(JsonNode node, List<ObjectNode> objects) {
    if (node instanceof ObjectNode object) {
      objects.add(object);
      object.values().forEach(child -> gather(child, objects));
    } else if (node instanceof ArrayNode list) {
      list.forEach(child -> gather(child, objects));
    }
  }

  private <T> T pick(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }
}
