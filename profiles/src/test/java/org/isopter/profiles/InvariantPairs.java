package org.isopter.profiles;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Sampler;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;
import org.isopter.profiles.artefact.Artefacts;
import tools.jackson.databind.node.ObjectNode;

/** Finds for each invariant an observation that keeps it and one that breaks it and no other. */
final class InvariantPairs {

  private static final int TRIES = 300;

  private final Catalogue catalogue;
  private final ProfileValidator validator;

  InvariantPairs(Catalogue catalogue, ProfileValidator validator) {
    this.catalogue = catalogue;
    this.validator = validator;
  }

  /**
   * The two observations.
   *
   * @param pass keeps every rule
   * @param fail breaks the one
   * @param message what is said of the second
   */
  record Pair(ObjectNode pass, ObjectNode fail, ValidationMessage message) {}

  Map<String, Pair> all() {
    Map<String, Pair> pairs = new TreeMap<>();
    for (String key : Artefacts.of(catalogue).invariants().keySet()) {
      pairs.put(key, pair(key));
    }
    return pairs;
  }

  Pair pair(String key) {
    Random random = new Random(key.hashCode());
    Sampler sampler = new Sampler(random);
    ExamSampler facts = new ExamSampler(catalogue.all(), random);
    for (int tries = 0; tries < TRIES; tries++) {
      Fact<?> fact = fact(key, facts);
      Optional<Pair> pair =
          Breaker.broken(fact, rule(key, fact), sampler).flatMap(fail -> judged(key, fact, fail));
      if (pair.isPresent()) {
        return pair.get();
      }
    }
    throw new IllegalStateException("no observation breaks " + key + " alone");
  }

  private Optional<Pair> judged(String key, Fact<?> fact, ObjectNode fail) {
    List<ValidationMessage> messages = validator.validate(fail.toString());
    boolean alone = messages.size() == 1 && messages.get(0).text().startsWith(key + ":");
    ObjectNode pass = Wire.observation(fact);
    return alone && validator.validate(pass.toString()).isEmpty()
        ? Optional.of(new Pair(pass, fail, messages.get(0)))
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
