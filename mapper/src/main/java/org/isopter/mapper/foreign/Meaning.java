package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Site;

/** What the codes of one observation or component say together. */
final class Meaning {

  /** A side and where it is said. */
  record Side(Site site, String at, String rule) {}

  private final Map<String, String> findings = new LinkedHashMap<>();
  private final List<Side> sides = new ArrayList<>();
  private final Map<String, String> parts = new HashMap<>();
  private Optional<String> notation = Optional.empty();
  private Optional<String> value = Optional.empty();
  private Optional<String> method = Optional.empty();
  private boolean group;

  /** Adds what a code says. */
  void add(Effect effect, String at) throws Refusal {
    effect.finding().ifPresent(finding -> findings.putIfAbsent(finding, at));
    effect.site().ifPresent(site -> sides.add(new Side(site, at, "side-in-code")));
    for (Map.Entry<String, String> part : effect.parts().entrySet()) {
      part(part.getKey(), part.getValue(), at);
    }
    notation = agreed(notation, effect.notation(), at);
    value = agreed(value, effect.value(), at);
    method = agreed(method, effect.method(), at);
  }

  /** Notes that the code is that of a group of findings. */
  void group(Effect effect, String at) throws Refusal {
    group = true;
    method = agreed(method, effect.method(), at);
  }

  boolean isGroup() {
    return group;
  }

  boolean isEmpty() {
    return findings.isEmpty() && !group;
  }

  List<Side> sides() {
    return sides;
  }

  Map<String, String> parts() {
    return parts;
  }

  Optional<String> notation() {
    return notation;
  }

  Optional<String> value() {
    return value;
  }

  Optional<String> method() {
    return method;
  }

  /** Returns the one finding that the codes name, the most specific of compatible ones. */
  Optional<String> finding() throws Refusal {
    Map<String, String> left = new LinkedHashMap<>(findings);
    if (left.size() > 1) {
      // Any acuity is an acuity, and one through a pinhole is one at distance.
      left.remove(Effect.ACUITY);
    }
    if (left.containsKey("pinhole-acuity")) {
      left.remove("distance-acuity");
    }
    if (left.size() > 1) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          left.values().iterator().next(),
          String.join(" and ", left.keySet()),
          "codes of one finding");
    }
    return left.keySet().stream().findFirst();
  }

  private void part(String key, String word, String at) throws Refusal {
    String other = parts.get(key);
    if (other == null || isVaguer(other, word)) {
      parts.put(key, word);
    } else if (!other.equals(word) && !isVaguer(word, other)) {
      throw Refusal.of(Why.CODES_DISAGREE, at, key + " " + other + " and " + word, "one of them");
    }
  }

  /** A best corrected acuity is a corrected one: the code that says more holds. */
  private static boolean isVaguer(String word, String than) {
    return word.equals("corrected") && !than.equals("unaided") || word.equals("other");
  }

  private static Optional<String> agreed(Optional<String> one, Optional<String> other, String at)
      throws Refusal {
    if (one.isPresent() && other.isPresent() && !one.equals(other)) {
      throw Refusal.of(Why.CODES_DISAGREE, at, one.get() + " and " + other.get(), "one of them");
    }
    return one.or(() -> other);
  }
}
