package org.isopter.mapper.describe;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How often each answer was given.
 *
 * @param finding the finding
 * @param part the part
 * @param counts the answers with how often, the most frequent first
 */
public record Answered(String finding, String part, Map<String, Long> counts) {

  public Answered {
    counts = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(counts));
  }

  /** Returns the finding, with the part where it is not the value itself. */
  String title() {
    return part.equals("value") ? finding : finding + ", " + part;
  }

  /** Returns in words what a picture of the answers shows. */
  String summary() {
    return title()
        + counts.entrySet().stream()
            .map(answer -> "; " + answer.getKey() + ": " + answer.getValue() + " times")
            .collect(Collectors.joining());
  }
}
