package org.isopter.model.value;

import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * A value, or every fault that stood in its way.
 *
 * @param <T> the type of the value
 */
public sealed interface Result<T> {

  /** The value. */
  record Ok<T>(T value) implements Result<T> {}

  /** The faults, at least one. */
  record Refused<T>(List<Fault> faults) implements Result<T> {
    public Refused {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("a refusal needs a fault");
      }
    }
  }

  /** Returns a value. */
  static <T> Result<T> ok(T value) {
    return new Ok<>(value);
  }

  /** Returns a refusal for one fault. */
  static <T> Result<T> refused(Fault fault) {
    return new Refused<>(List.of(fault));
  }

  /** Returns a refusal for at least one fault. */
  static <T> Result<T> refused(List<Fault> faults) {
    return new Refused<>(faults);
  }

  /** Runs a computation that may throw a {@link FaultException} and returns what came of it. */
  static <T> Result<T> of(Supplier<T> computation) {
    try {
      return ok(computation.get());
    } catch (FaultException refused) {
      return refused(refused.faults());
    }
  }

  /** Says whether there is a value. */
  default boolean isOk() {
    return this instanceof Ok;
  }

  /** Returns the faults; none when there is a value. */
  default List<Fault> faults() {
    return this instanceof Refused<T> refused ? refused.faults() : List.of();
  }

  /**
   * Returns the value.
   *
   * @throws FaultException when there is none
   */
  default T orThrow() {
    if (this instanceof Ok<T> ok) {
      return ok.value();
    }
    throw new FaultException(faults());
  }

  /** Returns the result of a further step on the value, or the same faults. */
  default <R> Result<R> flatMap(Function<? super T, Result<R>> next) {
    return this instanceof Ok<T> ok ? next.apply(ok.value()) : refused(faults());
  }

  /** Returns the result with its value changed. */
  default <R> Result<R> map(Function<? super T, ? extends R> change) {
    return flatMap(value -> ok(change.apply(value)));
  }
}
