package org.isopter.model.finding;

/**
 * A value beside its encoded form, found to keep everything that its layout asks.
 *
 * <p>Only a {@link Layout} makes one: who holds it need not check the value again.
 *
 * @param <V> the Java type of the value
 */
public final class Decoded<V> {

  private final Layout<V> layout;
  private final EncodedValue encoded;
  private final V value;

  Decoded(Layout<V> layout, EncodedValue encoded, V value) {
    this.layout = layout;
    this.encoded = encoded;
    this.value = value;
  }

  /** Returns the layout that it was checked against. */
  public Layout<V> layout() {
    return layout;
  }

  /** Returns the value in first-order form. */
  public EncodedValue encoded() {
    return encoded;
  }

  /** Returns the value. */
  public V value() {
    return value;
  }
}
