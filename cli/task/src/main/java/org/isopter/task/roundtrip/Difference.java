package org.isopter.task.roundtrip;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tools.jackson.databind.JsonNode;

/**
 * One place at which two records differ.
 *
 * @param path the keys that lead there
 * @param before what stood there, {@code nothing} where nothing did
 * @param after what stands there
 */
record Difference(String path, String before, String after) {

  /** Returns every difference between two trees, in the order of the first. */
  static List<Difference> between(JsonNode before, JsonNode after) {
    List<Difference> found = new ArrayList<>();
    compare("", before, after, found);
    return found;
  }

  private static void compare(String path, JsonNode one, JsonNode other, List<Difference> found) {
    if (one.isObject() && other.isObject()) {
      Set<String> names = new LinkedHashSet<>(one.propertyNames());
      names.addAll(other.propertyNames());
      for (String name : names) {
        String below = path.isEmpty() ? name : path + "." + name;
        compare(below, one.path(name), other.path(name), found);
      }
    } else if (one.isArray() && other.isArray()) {
      for (int i = 0; i < Math.max(one.size(), other.size()); i++) {
        compare(path + "[" + i + "]", one.path(i), other.path(i), found);
      }
    } else if (!text(one).equals(text(other))) {
      // By text and not by number: 0.3 and 0.30 are not the same measurement.
      found.add(new Difference(path, text(one), text(other)));
    }
  }

  private static String text(JsonNode node) {
    if (node.isMissingNode()) {
      return "nothing";
    }
    return node.isString() ? node.stringValue() : node.toString();
  }
}
