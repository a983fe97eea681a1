package org.isopter.model.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/**
 * One alternative of a choice of values.
 *
 * @param <T> the Java type of the alternative
 */
public final class Alternative<T> {

  private final Concept notation;
  private final Class<T> type;
  private final Predicate<T> when;
  private final Part<T, ?> value;
  private final List<Part<T, ?>> parts;
  private final Function<Values, T> build;

  private Alternative(
      Concept notation,
      Class<T> type,
      Predicate<T> when,
      Part<T, ?> value,
      List<Part<T, ?>> parts,
      Function<Values, T> build) {
    this.notation = notation;
    this.type = type;
    this.when = when;
    this.value = value;
    this.parts = List.copyOf(parts);
    this.build = build;
  }

  /** Returns an alternative that is a single value. */
  public static <T, P> Alternative<T> of(
      Concept notation, Class<T> type, Shape<P> shape, Function<T, P> getter, Function<P, T> make) {
    Part<T, P> value = Part.value(shape, getter);
    return new Alternative<>(
        notation, type, any -> true, value, List.of(), values -> make.apply(values.get(value)));
  }

  /** Returns an alternative that is a value with parts of its own. */
  public static <T, P> Alternative<T> of(
      Concept notation,
      Class<T> type,
      Shape<P> shape,
      Function<T, P> getter,
      List<Part<T, ?>> parts,
      Make<P, T> make) {
    Part<T, P> value = Part.value(shape, getter);
    return new Alternative<>(
        notation, type, any -> true, value, parts, values -> make.of(values.get(value), values));
  }

  /** Returns this alternative for only some values of its type. */
  public Alternative<T> when(Predicate<T> some) {
    return new Alternative<>(notation, type, some, value, parts, build);
  }

  /**
   * Makes an alternative from its value and its parts.
   *
   * @param <P> the type of the value
   * @param <T> the type of the alternative
   */
  @FunctionalInterface
  public interface Make<P, T> {
    /** Returns the alternative. */
    T of(P value, Values parts);
  }

  /** Returns what tells this alternative from the others. */
  public Concept notation() {
    return notation;
  }

  List<Part<T, ?>> parts() {
    return parts;
  }

  Spec spec() {
    return value.spec();
  }

  boolean holds(Object chosen) {
    return type.isInstance(chosen) && when.test(type.cast(chosen));
  }

  Optional<Datum> valueOf(Object chosen) {
    return value.in(type.cast(chosen)).flatMap(Outcome::ifFound);
  }

  void collect(Object chosen, PartSink sink) {
    parts.forEach(part -> sink.put(part.key(), part.in(type.cast(chosen))));
  }

  T build(Values values) {
    return build.apply(values);
  }
}
