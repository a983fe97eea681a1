package org.isopter.model.exam;

import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * The facts of one finding, in the order of the record.
 *
 * @param <V> the type of the finding's value
 */
public final class Facts<V> implements Iterable<Fact<V>> {

  private final List<Fact<V>> facts;

  Facts(List<Fact<V>> facts) {
    this.facts = List.copyOf(facts);
  }

  /** Returns the facts of one site. */
  public Facts<V> at(Site site) {
    return new Facts<>(facts.stream().filter(fact -> fact.site() == site).toList());
  }

  /** Returns the values that were found. */
  public List<V> values() {
    return facts.stream()
        .map(Fact::outcome)
        .map(Outcome::ifFound)
        .flatMap(Optional::stream)
        .toList();
  }

  /** Returns the first value that was found. */
  public Optional<V> first() {
    return values().stream().findFirst();
  }

  /** Says whether there is no fact at all, not even an absent one. */
  public boolean isEmpty() {
    return facts.isEmpty();
  }

  /** Returns the facts as a stream. */
  public Stream<Fact<V>> stream() {
    return facts.stream();
  }

  @Override
  public Iterator<Fact<V>> iterator() {
    return facts.iterator();
  }
}
