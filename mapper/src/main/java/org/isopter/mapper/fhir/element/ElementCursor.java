package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.isopter.model.value.Fault;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A place in a JSON document. Reading takes: what was understood is gone from the tree, so what
 * remains at the end is exactly what nobody understood.
 */
public final class ElementCursor {

  private final ObjectNode node;
  private final @Nullable ElementCursor parent;
  private final String step;
  private final int index;
  private final List<Fault> faults;

  private ElementCursor(
      ObjectNode node, @Nullable ElementCursor parent, String step, int index, List<Fault> faults) {
    this.node = node;
    this.parent = parent;
    this.step = step;
    this.index = index;
    this.faults = faults;
  }

  /** Returns the root of a document; faults found below it are added to the list. */
  public static ElementCursor root(ObjectNode node, List<Fault> faults) {
    return new ElementCursor(
        node, null, node.path("resourceType").asString("resource"), -1, faults);
  }

  /** Returns where this is, for instance {@code Bundle.entry[2].resource}. */
  public String path() {
    String own = index < 0 ? step : step + "[" + index + "]";
    return parent == null ? own : parent.path() + "." + own;
  }

  /** Says whether there is an element of that name, taken or not. */
  public boolean has(String name) {
    return node.has(name);
  }

  /** Returns a text without taking it. */
  public String peek(String name) {
    return node.path(name).asString("");
  }

  /** Returns the object of that name; what is read from it is taken. */
  public Optional<ElementCursor> object(String name) {
    JsonNode child = node.get(name);
    if (child == null) {
      return Optional.empty();
    }
    if (child instanceof ObjectNode object) {
      return Optional.of(new ElementCursor(object, this, name, -1, faults));
    }
    fault(name, show(child), "an object");
    return Optional.empty();
  }

  /** Returns the object of that name, or reports that it is missing. */
  public Optional<ElementCursor> required(String name) {
    require(name);
    return object(name);
  }

  /** Reports an element that is missing. */
  public void require(String name) {
    if (!node.has(name)) {
      fault(name, "nothing", "an element of that name");
    }
  }

  /** Returns the objects of the list of that name; none where there is no such list. */
  public List<ElementCursor> objects(String name) {
    JsonNode list = node.get(name);
    if (list == null) {
      return List.of();
    }
    if (!list.isArray()) {
      fault(name, show(list), "a list");
      return List.of();
    }
    List<ElementCursor> objects = new ArrayList<>(list.size());
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i) instanceof ObjectNode object) {
        objects.add(new ElementCursor(object, this, name, i, faults));
      } else {
        fault(name + "[" + i + "]", show(list.get(i)), "an object");
      }
    }
    return objects;
  }

  /** Returns the only object of a list, or reports how many there are. */
  public Optional<ElementCursor> only(String name) {
    List<ElementCursor> objects = objects(name);
    if (objects.size() == 1) {
      return Optional.of(objects.get(0));
    }
    fault(name, objects.size() + " of them", "exactly one");
    return Optional.empty();
  }

  /** Takes a text. */
  public Optional<String> text(String name) {
    return take(name, JsonNode::isString, JsonNode::stringValue, "text");
  }

  /** Takes a list of texts. */
  public List<String> texts(String name) {
    List<String> texts = new ArrayList<>();
    take(name, JsonNode::isArray, list -> list, "a list")
        .ifPresent(list -> list.forEach(text -> texts.add(text.asString(""))));
    return texts;
  }

  /** Takes a number, its digits as they are; one of too many digits is a fault. */
  public Optional<BigDecimal> number(String name) {
    Optional<BigDecimal> number =
        take(name, JsonNode::isNumber, JsonNode::decimalValue, "a number");
    if (number.isPresent() && !NumberLimit.holds(number.get())) {
      fault(name, number.get().toString(), "a number of few digits");
      return Optional.empty();
    }
    return number;
  }

  Optional<Integer> integer(String name) {
    return take(name, JsonNode::canConvertToInt, JsonNode::intValue, "a whole number");
  }

  Optional<Boolean> truth(String name) {
    return take(name, JsonNode::isBoolean, JsonNode::booleanValue, "true or false");
  }

  /** Takes a text that must be there and be this one. */
  public void expect(String name, String wanted) {
    String quoted = "\"" + wanted + "\"";
    String seen = text(name).orElse("");
    if (!seen.equals(wanted)) {
      fault(name, seen.isEmpty() ? "nothing" : "\"" + seen + "\"", quoted);
    }
  }

  /** Takes what carries no finding and is known to be in order. */
  public void drop(String name) {
    node.remove(name);
  }

  /** Takes a text that carries no finding; reports one of another shape. */
  public void drop(String name, PrimitiveForm shape) {
    shaped(name, shape);
  }

  /** Takes a text; reports one of another shape. */
  public Optional<String> shaped(String name, PrimitiveForm shape) {
    Optional<String> text = text(name);
    text.filter(seen -> !shape.fits(seen))
        .ifPresent(seen -> fault(name, "\"" + seen + "\"", shape.wanted()));
    return text;
  }

  /** Takes everything that is left here without reading it. */
  public void abandon() {
    node.removeAll();
  }

  /** Notes a fault of an element, or of this one where the name is empty. */
  public void fault(String name, String seen, String wanted) {
    faults.add(Fault.of(name.isEmpty() ? path() : path() + "." + name, seen, wanted));
  }

  /** Notes a fault. */
  public void fault(Fault fault) {
    faults.add(fault);
  }

  /** Reports everything that was not taken. */
  public void reportRest() {
    if (!hasLeaf(node)) {
      return;
    }
    for (Map.Entry<String, JsonNode> property : node.properties()) {
      rest(property.getKey(), property.getValue());
    }
  }

  private static boolean hasLeaf(JsonNode value) {
    if (!value.isContainer()) {
      return true;
    }
    for (JsonNode child : value) {
      if (hasLeaf(child)) {
        return true;
      }
    }
    return false;
  }

  private void rest(String name, JsonNode value) {
    if (value.isContainer()) {
      if (value.isObject()) {
        value.properties().forEach(p -> rest(name + "." + p.getKey(), p.getValue()));
      } else {
        for (int i = 0; i < value.size(); i++) {
          rest(name + "[" + i + "]", value.get(i));
        }
      }
    } else {
      fault(name, show(value), "no such element here");
    }
  }

  private <T> Optional<T> take(
      String name, Predicate<JsonNode> fits, Function<JsonNode, T> read, String wanted) {
    JsonNode value = node.get(name);
    if (value == null) {
      return Optional.empty();
    }
    if (!fits.test(value)) {
      fault(name, show(value), wanted);
      node.remove(name);
      return Optional.empty();
    }
    node.remove(name);
    return Optional.of(read.apply(value));
  }

  private static String show(JsonNode value) {
    String text = value.toString();
    return text.length() <= 60 ? text : text.substring(0, 57) + "...";
  }
}
