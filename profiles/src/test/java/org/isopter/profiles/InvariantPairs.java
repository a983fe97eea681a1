package org.isopter.profiles;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Sampler;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;
import tools.jackson.databind.node.ObjectNode;

/**
 * Makes for an invariant an observation that keeps it and one that breaks it: a random fact of the
 * finding, written as it is and with one element changed. The same seed makes the same pair.
 */
final class InvariantPairs {

  private static final int TRIES = 300;

  private final Catalogue catalogue;

  InvariantPairs(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The observation that keeps every rule, and the one that breaks the one. */
  record Pair(ObjectNode pass, ObjectNode fail) {}

  /** A seed, its pair, and what the validator says of the observation that breaks the rule. */
  record Found(long seed, Pair pair, ValidationMessage message) {}

  /** Returns the pair of a seed; empty where its fact has nothing to break in this way. */
  Optional<Pair> pair(String key, long seed) {
    Random random = new Random(seed);
    Sampler sampler = new Sampler(random);
    Fact<?> fact = fact(key, new ExamSampler(catalogue.all(), random));
    return Breaker.broken(fact, rule(key, fact), sampler)
        .map(fail -> new Pair(Wire.observation(fact), fail));
  }

  /**
   * Returns the first seed whose pair breaks this invariant and no other rule.
   *
   * @throws IllegalStateException if there is none
   */
  Found search(String key, ProfileValidator validator) {
    for (long seed = 0; seed < TRIES; seed++) {
      long tried = seed;
      Optional<Found> found = pair(key, seed).flatMap(pair -> judged(key, tried, pair, validator));
      if (found.isPresent()) {
        return found.get();
      }
    }
    throw new IllegalStateException("no observation breaks " + key + " alone");
  }

  private static Optional<Found> judged(
      String key, long seed, Pair pair, ProfileValidator validator) {
    List<ValidationMessage> messages = validator.validate(pair.fail().toString());
    boolean alone = messages.size() == 1 && messages.get(0).text().startsWith(key + ":");
    return alone && validator.validate(pair.pass().toString()).isEmpty()
        ? Optional.of(new Found(seed, pair, messages.get(0)))
        : Optional.empty();
  }

  private Fact<?> fact(String key, ExamSampler facts) {
    return finding(key)
        .<Fact<?>>map(facts::fact)
        .orElseGet(() -> Fact.absent(Pupils.SIZE, Site.RIGHT, Absence.REFUSED));
  }

  private static String rule(String key, Fact<?> fact) {
    String id = fact.finding().id();
    return key.startsWith(id + "-") ? key.substring(id.length() + 1) : key;
  }

  private Optional<Finding<?>> finding(String key) {
    return catalogue.all().stream()
        .filter(finding -> key.startsWith(finding.id() + "-"))
        .max(Comparator.comparingInt(finding -> finding.id().length()));
  }
}
