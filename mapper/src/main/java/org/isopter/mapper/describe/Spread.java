package org.isopter.mapper.describe;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/**
 * How the numbers of a finding, or of one part of it, are spread.
 *
 * @param finding the finding
 * @param part the part
 * @param condition what was worn, lit or shown; empty where nothing tells it from others
 * @param unit the unit, as people write it
 * @param byEye the numbers of each eye
 */
public record Spread(
    String finding, String part, String condition, String unit, Map<String, List<Double>> byEye) {

  public Spread {
    byEye = Map.copyOf(byEye);
  }

  /** Returns the finding, with the part where it is not the value itself, and the condition. */
  String title() {
    String what = part.equals("value") ? finding : finding + ", " + part;
    return condition.isEmpty() ? what : what + ", " + condition;
  }

  /** Returns in words what a picture of the numbers shows. */
  String summary() {
    StringBuilder words = new StringBuilder(title());
    for (Site eye : Site.values()) {
      List<Double> numbers = byEye.getOrDefault(eye.word(), List.of());
      if (!numbers.isEmpty()) {
        words.append("; %s: %d numbers".formatted(eye.word(), numbers.size()));
        words.append(
            " from %s to %s".formatted(Collections.min(numbers), Collections.max(numbers)));
      }
    }
    return words.append(unit.equals(Unit.ONE.label()) ? "" : " " + unit).toString();
  }
}
