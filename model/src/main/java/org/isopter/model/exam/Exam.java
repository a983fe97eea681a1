package org.isopter.model.exam;

import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.isopter.model.finding.Finding;

/**
 * One examination.
 *
 * @param header what holds for the whole
 * @param facts what was found and what was not done: grouped by finding in the order in which the
 *     findings first appear, then by site
 */
public record Exam(Header header, List<Fact<?>> facts) {

  public Exam {
    // A fact at the time of the examination has no time of its own: one truth in one place.
    // Facts stand grouped as a record groups them, so that every form keeps the same order.
    facts =
        facts.stream()
            .<Fact<?>>map(fact -> atHeaderTime(header, fact))
            .map(each(new IdentityHashMap<>()))
            .sorted(order(facts))
            .toList();
  }

  /** Returns the examination as one asks it: by finding, and by eye. */
  public ExamView view() {
    return ExamView.of(this);
  }

  /** Returns the names of the facts, in the order of the facts. */
  public List<FactKey> keys() {
    return FactKey.of(facts);
  }

  private static Fact<?> atHeaderTime(Header header, Fact<?> fact) {
    boolean same = fact.at().filter(header.performed()::isEqual).isPresent();
    return same ? fact.withoutTime() : fact;
  }

  /** One object that stands twice is two facts, for two equal readings are two readings. */
  private static UnaryOperator<Fact<?>> each(IdentityHashMap<Fact<?>, Fact<?>> before) {
    return fact -> before.putIfAbsent(fact, fact) == null ? fact : fact.remarks(fact.remarks());
  }

  /** Facts stand behind the findings that came before their own, then by site. */
  private static Comparator<Fact<?>> order(List<Fact<?>> facts) {
    Map<Finding<?>, Integer> rank = new HashMap<>();
    facts.forEach(fact -> rank.putIfAbsent(fact.finding(), rank.size()));
    return Comparator.<Fact<?>, Integer>comparing(fact -> rank.getOrDefault(fact.finding(), 0))
        .thenComparing(Fact::site);
  }
}
