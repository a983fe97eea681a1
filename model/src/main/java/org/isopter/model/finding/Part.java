package org.isopter.model.finding;

import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Code;
import org.isopter.model.value.Outcome;

/**
 * A typed key to one part of a composite value; it becomes one component.
 *
 * @param <V> the composite type
 * @param <P> the type of the part
 */
public final class Part<V, P> {

  /** The key of the value itself, which has no component of its own. */
  public static final String VALUE = "value";

  private final String key;
  private final Code code;
  private final Shape<P> shape;
  private final Need need;
  private final Function<V, Optional<Outcome<P>>> getter;

  private enum Need {
    REQUIRED,
    OPTIONAL,
    OPTIONAL_OR_ABSENT
  }

  private Part(
      String key, Code code, Shape<P> shape, Need need, Function<V, Optional<Outcome<P>>> getter) {
    this.key = key;
    this.code = code;
    this.shape = shape;
    this.need = need;
    this.getter = getter;
  }

  /** Returns the key to the value itself: what goes before all parts. */
  static <V, P> Part<V, P> value(Shape<P> shape, Function<V, P> getter) {
    return required(VALUE, "Value", shape, getter);
  }

  /** Returns a part that every value has. */
  public static <V, P> Part<V, P> required(
      String key, String title, Shape<P> shape, Function<V, P> getter) {
    return new Part<>(
        key,
        own(key, title),
        shape,
        Need.REQUIRED,
        whole -> Optional.of(Outcome.found(getter.apply(whole))));
  }

  /** Returns a part that may be left out. */
  public static <V, P> Part<V, P> optional(
      String key, String title, Shape<P> shape, Function<V, Optional<P>> getter) {
    return new Part<>(
        key,
        own(key, title),
        shape,
        Need.OPTIONAL,
        whole -> getter.apply(whole).map(Outcome::found));
  }

  /** Returns a part that may be left out, or be stated as absent with a reason. */
  public static <V, P> Part<V, P> orAbsent(
      String key, String title, Shape<P> shape, Function<V, Optional<Outcome<P>>> getter) {
    return new Part<>(key, own(key, title), shape, Need.OPTIONAL_OR_ABSENT, getter);
  }

  private static Code own(String key, String title) {
    return Code.local("part", key, title);
  }

  /** Returns this part under a published code. */
  public Part<V, P> coded(Code published) {
    return new Part<>(key, published, shape, need, getter);
  }

  /** Returns the key, in lower case with hyphens: what a record calls the part. */
  public String key() {
    return key;
  }

  /** Returns the code of the component. */
  public Code code() {
    return code;
  }

  /** Returns the shape of the part. */
  public Shape<P> shape() {
    return shape;
  }

  /** Returns what the part may be. */
  public Spec spec() {
    return shape.spec();
  }

  /** Says whether every value has the part. */
  public boolean isRequired() {
    return need == Need.REQUIRED;
  }

  /** Says whether the part may be stated as absent with a reason. */
  public boolean mayBeAbsent() {
    return need == Need.OPTIONAL_OR_ABSENT;
  }

  /** Returns the part of a whole, in first-order form. */
  Optional<Outcome<Datum>> in(V whole) {
    return getter.apply(whole).map(outcome -> outcome.map(shape::toDatum));
  }

  @Override
  public String toString() {
    return key;
  }
}
