package org.isopter.profiles.compiled;

import java.util.List;
import java.util.stream.Collectors;

/** The words for what was seen. */
final class SeenWords {

  private SeenWords() {}

  /** Returns what was seen; {@code nothing} where nothing was. */
  static String of(List<Item> items) {
    return items.isEmpty()
        ? "nothing"
        : items.stream().map(SeenWords::of).collect(Collectors.joining(", "));
  }

  /** Returns an item in words. */
  static String of(Item item) {
    return switch (item.type()) {
      case "Coding" -> item.text("system") + "|" + item.text("code");
      case "CodeableConcept" ->
          item.members("coding").stream().map(SeenWords::of).collect(Collectors.joining(" + "));
      case "Ratio" -> quantity(item, "numerator") + " over " + quantity(item, "denominator");
      case "Quantity" ->
          item.text("value") + " " + item.text("unit") + " (" + item.text("code") + ")";
      case "Observation.component" ->
          item.members("code").stream().map(SeenWords::of).collect(Collectors.joining());
      default -> item.text().isEmpty() ? item.type() : item.text();
    };
  }

  private static String quantity(Item ratio, String name) {
    return ratio.members(name).stream().map(SeenWords::of).collect(Collectors.joining());
  }
}
