package org.isopter.model.exam;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.value.Site;

/**
 * One measurement in each eye: of one finding, made in one way, under the same conditions and at
 * the same time, so that the two values may be set against each other.
 *
 * @param right what was found in the right eye
 * @param left what was found in the left eye
 * @param <V> the Java type of the values
 */
public record EyePair<V>(Seen<V> right, Seen<V> left) {

  /**
   * Puts them together.
   *
   * @throws IllegalArgumentException when they are not of one measurement
   */
  public EyePair {
    if (!isPair(right, left)) {
      throw new IllegalArgumentException(
          right.key() + " and " + left.key() + " are no right and left of one measurement");
    }
  }

  /** Returns both, the right one first. */
  public List<Seen<V>> seen() {
    return List.of(right, left);
  }

  /** Returns the pairs that a value of the right eye makes with those of the left. */
  static <V> Stream<EyePair<V>> of(Seen<V> right, Stream<Seen<V>> left) {
    return left.filter(one -> isPair(right, one)).map(one -> new EyePair<>(right, one));
  }

  private static boolean isPair(Seen<?> right, Seen<?> left) {
    return right.site() == Site.RIGHT
        && Measurement.of(left.fact()).isFellowOf(Measurement.of(right.fact()));
  }
}
