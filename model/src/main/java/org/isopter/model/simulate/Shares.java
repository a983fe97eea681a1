package org.isopter.model.simulate;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * Things that turn up with stated shares, which add up to 1.
 *
 * @param of the share of each, in order
 * @param <T> the type of the things
 */
public record Shares<T>(Map<T, Double> of) {

  public Shares {
    of = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(of));
    double sum = of.values().stream().mapToDouble(Double::doubleValue).sum();
    if (Math.abs(sum - 1) > 1e-9) {
      throw new IllegalArgumentException("shares add up to " + sum + " instead of 1: " + of);
    }
  }

  static <T> Shares<T> of(T first, double one) {
    return new Shares<>(Map.of(first, one));
  }

  static <T> Shares<T> of(T first, double one, T second, double two) {
    return Shares.<T>list().and(first, one).and(second, two).end();
  }

  static <T> Builder<T> list() {
    return new Builder<>();
  }

  /** Returns one of the things, each as often as its share says. */
  T pick(RandomGenerator random) {
    double left = random.nextDouble();
    T last = of.keySet().iterator().next();
    for (Map.Entry<T, Double> entry : of.entrySet()) {
      last = entry.getKey();
      left -= entry.getValue();
      if (left < 0) {
        break;
      }
    }
    return last;
  }

  /** Collects things and their shares. */
  static final class Builder<T> {
    private final Map<T, Double> of = new LinkedHashMap<>();

    Builder<T> and(T thing, double share) {
      of.put(thing, share);
      return this;
    }

    Shares<T> end() {
      return new Shares<>(of);
    }
  }
}
