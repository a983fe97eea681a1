package org.isopter.model.value;

import java.util.Optional;
import java.util.function.Function;

/**
 * What came of an examination step: a value, or the reason why there is none.
 *
 * @param <V> the type of the value
 */
public sealed interface Outcome<V> {

  /** A value was found. */
  record Found<V>(V value) implements Outcome<V> {}

  /** No value was found, and this is why. */
  record Absent<V>(Absence reason) implements Outcome<V> {}

  /** Returns a found value. */
  static <V> Outcome<V> found(V value) {
    return new Found<>(value);
  }

  /** Returns an absent value. */
  static <V> Outcome<V> absent(Absence reason) {
    return new Absent<>(reason);
  }

  /** Returns the value when one was found. */
  default Optional<V> ifFound() {
    return this instanceof Found<V> found ? Optional.of(found.value()) : Optional.empty();
  }

  /** Returns the reason when no value was found. */
  default Optional<Absence> ifAbsent() {
    return this instanceof Absent<V> absent ? Optional.of(absent.reason()) : Optional.empty();
  }

  /** Returns the outcome with its value changed. */
  default <R> Outcome<R> map(Function<? super V, ? extends R> change) {
    return fold(value -> found(change.apply(value)), Outcome::absent);
  }

  /** Answers for either case. */
  default <R> R fold(
      Function<? super V, ? extends R> found, Function<Absence, ? extends R> absent) {
    return this instanceof Absent<V> none
        ? absent.apply(none.reason())
        : found.apply(((Found<V>) this).value());
  }
}
