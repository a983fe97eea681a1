package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.model.value.Site;

/** What the codes of one observation or component say together. */
public final class Meaning {

  /** A side and where it is said. */
  public record Side(Site site, String at, String rule) {}

  private static final Set<String> ACUITIES =
      Set.of("distance-acuity", "pinhole-acuity", "near-acuity");

  private final Map<String, String> findings = new LinkedHashMap<>();
  private final List<Side> sides = new ArrayList<>();
  private final Map<String, String> parts = new HashMap<>();
  private Optional<String> notation = Optional.empty();
  private Optional<String> method = Optional.empty();
  private Optional<String> unit = Optional.empty();
  private Optional<CodedStatement> statement = Optional.empty();
  private Optional<String> topic = Optional.empty();
  private boolean group;

  /** Returns the same once more, to which more can be added. */
  public Meaning copy() {
    Meaning copy = new Meaning();
    copy.findings.putAll(findings);
    copy.sides.addAll(sides);
    copy.parts.putAll(parts);
    copy.notation = notation;
    copy.method = method;
    copy.unit = unit;
    copy.statement = statement;
    copy.topic = topic;
    copy.group = group;
    return copy;
  }

  /**
   * Adds what a code says.
   *
   * @throws Refusal when it contradicts what another code says
   */
  public void add(Effect effect, String at) throws Refusal {
    effect.finding().ifPresent(finding -> findings.putIfAbsent(finding, at));
    effect.site().ifPresent(site -> side(site, at));
    for (Map.Entry<String, String> part : effect.parts().entrySet()) {
      part(part.getKey(), part.getValue(), at);
    }
    notation = agreed(notation, effect.notation(), at);
    method = agreed(method, effect.method(), at);
    unit = agreed(unit, effect.unit(), at);
  }

  /** Notes that the code is that of a finding. */
  public void of(String finding, String at) {
    findings.putIfAbsent(finding, at);
  }

  /** Notes an eye that the code names. */
  public void side(Site site, String at) {
    sides.add(new Side(site, at, RuleId.SIDE_IN_CODE));
  }

  /**
   * Notes that the code is that of a group of findings.
   *
   * @throws Refusal when it contradicts what another code says
   */
  public void group(Effect effect, String at) throws Refusal {
    group = true;
    effect.site().ifPresent(site -> side(site, at));
    method = agreed(method, effect.method(), at);
    topic = agreed(topic, effect.topic(), at);
  }

  /**
   * Notes that the code itself is what was found.
   *
   * @throws Refusal when it contradicts what another code says
   */
  public void statement(CodedStatement said, String at) throws Refusal {
    if (statement.isPresent() && !statement.get().equals(said)) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          at,
          statement.get().display() + " and " + said.display(),
          "one of them");
    }
    statement = Optional.of(said);
    said.site().ifPresent(site -> side(site, at));
  }

  /** Says whether the code is that of a group of findings. */
  public boolean isGroup() {
    return group;
  }

  /** Says whether it is an acuity that is not known to be through a pinhole or near. */
  public boolean isDistance() {
    return !findings.containsKey("pinhole-acuity")
        && !findings.containsKey("near-acuity")
        && (findings.containsKey(Effect.ACUITY) || findings.containsKey("distance-acuity"));
  }

  /** Says whether a code names the finding. */
  public boolean names(String finding) {
    return findings.containsKey(finding);
  }

  /** Says whether nothing is known of the code. */
  public boolean isEmpty() {
    return findings.isEmpty() && statement.isEmpty() && !group;
  }

  /** Returns what the code itself says was found, where it does. */
  public Optional<CodedStatement> statement() {
    return statement;
  }

  /** Returns what the code is about: its finding, or the topic of its group. */
  public Optional<String> topic() {
    return findings.size() == 1
        ? Optional.of(findings.keySet().iterator().next())
        : findings.isEmpty() ? topic : Optional.empty();
  }

  /** Returns the eyes that the codes name, each with its place. */
  public List<Side> sides() {
    return sides;
  }

  /** Returns the values of parts that the codes state, by the key of the part. */
  public Map<String, String> parts() {
    return parts;
  }

  /** Returns the notation that the codes state. */
  public Optional<String> notation() {
    return notation;
  }

  /** Returns the unit that the codes state, by its UCUM code. */
  public Optional<String> unit() {
    return unit;
  }

  /** Returns the technique that the codes state, by its word. */
  public Optional<String> method() {
    return method;
  }

  /**
   * Returns the one finding that the codes name, the most specific of compatible ones.
   *
   * @throws Refusal when the codes name several that do not go together
   */
  public Optional<String> finding() throws Refusal {
    if (findings.size() < 2) {
      return findings.keySet().stream().findFirst();
    }
    Map<String, String> left = new LinkedHashMap<>(findings);
    if (left.keySet().stream().anyMatch(ACUITIES::contains)) {
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
    return word.equals("other")
        || (word.equals("corrected") && !than.equals("unaided"))
        || (word.equals("best") && than.equals("trial-lenses"))
        || (word.equals("habitual") && Set.of("spectacles", "contact-lenses").contains(than));
  }

  private static Optional<String> agreed(Optional<String> one, Optional<String> other, String at)
      throws Refusal {
    if (one.isPresent() && other.isPresent() && !one.equals(other)) {
      throw Refusal.of(Why.CODES_DISAGREE, at, one.get() + " and " + other.get(), "one of them");
    }
    return one.or(() -> other);
  }
}
