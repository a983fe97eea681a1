package org.isopter.model.finding;

import java.util.function.Function;

/**
 * How a Java type looks in first-order form: a spec, and the way to and from a datum.
 *
 * @param <P> the Java type
 */
public final class Shape<P> {

  private final Spec spec;
  private final Function<P, Datum> toDatum;
  private final Function<Datum, P> fromDatum;

  Shape(Spec spec, Function<P, Datum> toDatum, Function<Datum, P> fromDatum) {
    this.spec = spec;
    this.toDatum = toDatum;
    this.fromDatum = fromDatum;
  }

  /** Returns what a value may be. */
  public Spec spec() {
    return spec;
  }

  /** Returns the first-order form of a value. */
  public Datum toDatum(P value) {
    return toDatum.apply(value);
  }

  /**
   * Returns the value of a datum that fits the spec.
   *
   * @throws ClassCastException when the datum is of another kind; check it first
   */
  public P fromDatum(Datum datum) {
    return fromDatum.apply(datum);
  }

  /** Returns the shape of a type that wraps this one. */
  public <Q> Shape<Q> as(Function<P, Q> wrap, Function<Q, P> unwrap) {
    return new Shape<>(spec, unwrap.andThen(toDatum), fromDatum.andThen(wrap));
  }
}
