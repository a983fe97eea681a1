package org.isopter.model.check;

import org.isopter.model.exam.Fact;

/**
 * A fact with the value that was found.
 *
 * @param fact the fact
 * @param value its value
 * @param <V> the type of the value
 */
record Seen<V>(Fact<V> fact, V value) {

  /** Says whether both were found at the same time, as far as is stated. */
  boolean isWith(Seen<?> other) {
    return fact.at().equals(other.fact.at());
  }
}
