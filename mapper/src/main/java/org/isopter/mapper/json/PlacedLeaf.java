package org.isopter.mapper.json;

import java.util.ArrayList;
import java.util.List;

/**
 * A value and where it stands in its document. An object or a list without members counts as a
 * leaf: it is a thing that was said, too.
 *
 * @param at a JSON pointer (RFC 6901), for instance {@code /code/coding/0/display}; empty for the
 *     whole
 * @param value the value
 */
public record PlacedLeaf(String at, Raw value) {

  /** Adds the leaves of a value at a JSON pointer to a list, in the order of the text. */
  public static void collect(Raw value, String at, List<PlacedLeaf> leaves) {
    if (value instanceof Raw.Obj object && !object.members().isEmpty()) {
      object.members().forEach((name, child) -> collect(child, step(at, name), leaves));
    } else if (value instanceof Raw.Arr list && !list.items().isEmpty()) {
      for (int i = 0; i < list.items().size(); i++) {
        collect(list.items().get(i), at + "/" + i, leaves);
      }
    } else {
      leaves.add(new PlacedLeaf(at, value));
    }
  }

  /** Returns the members or the items, each in its place. */
  public List<PlacedLeaf> children() {
    List<PlacedLeaf> children = new ArrayList<>();
    if (value instanceof Raw.Obj object) {
      object
          .members()
          .forEach((name, child) -> children.add(new PlacedLeaf(step(at, name), child)));
    } else if (value instanceof Raw.Arr list) {
      for (int i = 0; i < list.items().size(); i++) {
        children.add(new PlacedLeaf(at + "/" + i, list.items().get(i)));
      }
    }
    return children;
  }

  /** Returns the steps of a pointer. */
  public static List<String> steps(String at) {
    List<String> steps = new ArrayList<>();
    int from = 1;
    while (from <= at.length()) {
      int slash = at.indexOf('/', from);
      int to = slash < 0 ? at.length() : slash;
      steps.add(at.substring(from, to).replace("~1", "/").replace("~0", "~"));
      from = to + 1;
    }
    return steps;
  }

  /** Returns the pointer to a member of what a pointer leads to. */
  public static String step(String at, String name) {
    return at + "/" + name.replace("~", "~0").replace("/", "~1");
  }

  /** Returns the pointer and the JSON text, for instance {@code /status "final"}. */
  @Override
  public String toString() {
    return at + " " + RawJson.write(value);
  }
}
