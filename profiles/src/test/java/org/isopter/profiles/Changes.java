package org.isopter.profiles;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tools.jackson.databind.JsonNode;

/** Tells by which elements one resource differs from another. */
final class Changes {

  private final List<String> found = new ArrayList<>();

  private Changes() {}

  /** Returns the elements that differ, each with its path, what it was and what it became. */
  static String of(JsonNode before, JsonNode after) {
    Changes changes = new Changes();
    changes.compare("", before, after);
    return String.join("; ", changes.found);
  }

  private void compare(String path, JsonNode before, JsonNode after) {
    if (before.isObject() && after.isObject()) {
      Set<String> names = new TreeSet<>(before.propertyNames());
      names.addAll(after.propertyNames());
      names.forEach(name -> compare(join(path, name), before.path(name), after.path(name)));
    } else if (before.isArray() && after.isArray()) {
      items(path, before, after);
    } else if (!before.equals(after)) {
      found.add(path + ": " + text(before) + " -> " + text(after));
    }
  }

  private void items(String path, JsonNode before, JsonNode after) {
    if (before.size() == after.size()) {
      for (int i = 0; i < before.size(); i++) {
        compare(path + "[" + i + "]", before.get(i), after.get(i));
      }
    } else {
      found.add(path + ": " + only(before, after) + " -> " + only(after, before));
    }
  }

  /** Returns what the items of the one array that the other has not are about. */
  private static String only(JsonNode array, JsonNode other) {
    Set<JsonNode> there = new HashSet<>();
    other.forEach(there::add);
    List<String> only = new ArrayList<>();
    for (JsonNode item : array) {
      if (!there.contains(item)) {
        only.add(text(item));
      }
    }
    return only.isEmpty() ? "none" : String.join(", ", only);
  }

  private static String join(String path, String name) {
    return path.isEmpty() ? name : path + "." + name;
  }

  private static String text(JsonNode node) {
    if (node.isMissingNode()) {
      return "none";
    }
    return node.isContainer() ? codes(node) : node.toString();
  }

  private static String codes(JsonNode node) {
    List<String> codes = new ArrayList<>();
    for (JsonNode code : node.findValues("code")) {
      if (code.isString()) {
        codes.add(code.asString());
      } else {
        codes.add(codes(code));
      }
    }
    return "{" + String.join(" ", codes) + "}";
  }
}
