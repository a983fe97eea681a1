package org.isopter.mapper.foreign.document;

import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;

/** Finds the extensions that may turn the meaning of a resource round. */
public final class Modifiers {

  private static final String NAME = "modifierExtension";

  private Modifiers() {}

  /** Returns the place of the first; one in a contained resource turns nothing else round. */
  static Optional<String> first(Raw value) {
    // To write down every place takes long, and hardly an observation has a modifier.
    return mayHold(value, NAME) ? place(value) : Optional.empty();
  }

  /** Returns true if an element at any depth has a name that begins so. */
  public static boolean mayHold(Raw value, String name) {
    if (value instanceof Raw.Obj object) {
      return object.hasNameLike(name) || mayHold(object.members().values(), name);
    }
    return value instanceof Raw.Arr list && mayHold(list.items(), name);
  }

  private static boolean mayHold(Iterable<Raw> values, String name) {
    for (Raw value : values) {
      if (mayHold(value, name)) {
        return true;
      }
    }
    return false;
  }

  private static Optional<String> place(Raw value) {
    return value.leaves().stream()
        .map(PlacedLeaf::at)
        .filter(place -> place.contains("/" + NAME))
        .filter(place -> !place.startsWith("/contained/"))
        .findFirst();
  }
}
