package org.isopter.model.drawing;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.exam.Measurement;

/**
 * What one eye gave at each examination, measured in one way.
 *
 * @param measured what was measured, and how
 * @param points the results in the order of time
 * @param limit how far two results of no change may lie apart, where that is published
 */
record TrendLine(Measurement measured, List<Point> points, Optional<TrendBand> limit) {

  TrendLine {
    points = List.copyOf(points);
  }

  /**
   * A result.
   *
   * @param when the time of the examination, or its own
   * @param number the number to draw; empty where there is none
   * @param words the result in words
   */
  record Point(OffsetDateTime when, Optional<BigDecimal> number, String words) {}

  /** Returns the first number, from which the limit is counted. */
  Optional<BigDecimal> first() {
    return points.stream().flatMap(point -> point.number().stream()).findFirst();
  }

  /** Says whether there is a second number to compare with the first. */
  boolean isFollowed() {
    return points.stream().filter(point -> point.number().isPresent()).count() > 1;
  }

  /** Returns how it was measured, in words; empty where nothing is said of it. */
  String how() {
    return String.join(
        ", ",
        Stream.concat(
                measured.technique().stream().map(how -> how.code().display()),
                measured.conditions().stream().map(word -> word.replace('-', ' ')))
            .toList());
  }
}
