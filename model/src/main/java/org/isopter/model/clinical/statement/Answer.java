package org.isopter.model.clinical.statement;

import java.util.Optional;
import java.util.function.Function;

/**
 * A derived value with the statement that carries it, or the statement why none is derived.
 *
 * <p>Input that is wrong is refused by a {@link org.isopter.model.value.Result}; an answer is
 * withheld where the input is right and still does not carry one.
 *
 * @param <T> the type of the value
 */
public sealed interface Answer<T> {

  /** A derived value. */
  record Given<T>(T found, Statement statement) implements Answer<T> {
    /**
     * Makes an answer.
     *
     * @throws IllegalArgumentException when the statement says that one cannot tell
     */
    public Given {
      if (statement.certainty() == Certainty.CANNOT_TELL) {
        throw new IllegalArgumentException(statement.id() + " gives what it cannot tell");
      }
    }
  }

  /** No value is derived, and this is why. */
  record Withheld<T>(Statement statement) implements Answer<T> {
    /**
     * Makes an answer without a value.
     *
     * @throws IllegalArgumentException when the statement claims to be able to tell
     */
    public Withheld {
      if (statement.certainty() != Certainty.CANNOT_TELL) {
        throw new IllegalArgumentException(statement.id() + " withholds what it can tell");
      }
    }
  }

  /** Returns what is said. */
  Statement statement();

  /** Returns the value when one is derived. */
  default Optional<T> value() {
    return this instanceof Given<T> given ? Optional.of(given.found()) : Optional.empty();
  }

  /** Says whether a value is derived. */
  default boolean isGiven() {
    return this instanceof Given;
  }

  /** Returns the answer with its value changed and its statement kept. */
  default <R> Answer<R> map(Function<? super T, ? extends R> change) {
    return this instanceof Given<T> given
        ? new Given<>(change.apply(given.found()), statement())
        : new Withheld<>(statement());
  }
}
