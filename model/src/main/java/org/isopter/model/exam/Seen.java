package org.isopter.model.exam;

import java.util.Optional;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * A value that was found, with its fact and the name of the fact.
 *
 * @param key the name of the fact within its examination
 * @param fact the fact
 * @param value what was found
 * @param <V> the Java type of the value
 */
public record Seen<V>(FactKey key, Fact<V> fact, V value) {

  /** Returns the eye, or both together. */
  public Site site() {
    return fact.site();
  }

  /** Returns the technique, when stated. */
  public Optional<Concept> method() {
    return fact.method();
  }

  /** Says whether two facts are of one moment, as far as is stated. */
  public static boolean isOfOneMoment(Fact<?> one, Fact<?> other) {
    return Measurement.moment(one).equals(Measurement.moment(other));
  }

  /** Says whether both were found at the same time, as far as is stated. */
  public boolean isWith(Seen<?> other) {
    return isOfOneMoment(fact, other.fact);
  }
}
