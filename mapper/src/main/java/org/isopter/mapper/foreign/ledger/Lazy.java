package org.isopter.mapper.foreign.ledger;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Makes a thing when it is first asked for, and only once: a bundle of ours is read without it.
 *
 * @param <T> the type of the thing
 */
public final class Lazy<T> implements Supplier<T> {

  private final Supplier<T> maker;
  private volatile @Nullable T made;

  private Lazy(Supplier<T> maker) {
    this.maker = maker;
  }

  /** Returns a supplier that asks the maker once, when it is first asked itself. */
  public static <T> Supplier<T> of(Supplier<T> maker) {
    return new Lazy<>(maker);
  }

  @Override
  public T get() {
    T there = made;
    return there == null ? make() : there;
  }

  private synchronized T make() {
    T there = made;
    if (there == null) {
      there = maker.get();
      made = there;
    }
    return there;
  }
}
