package org.isopter.model.compare;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Seen;

/**
 * What became of an acuity that one examination states as a line and the other only as worse or
 * better than a line. They are two findings and are not set against each other; but from 6/6 to
 * worse than 6/60 is no measurement that was "not repeated".
 */
final class BoundChange {

  private static final double MOST = RetestLimit.LINES.most().doubleValue();

  private BoundChange() {}

  /**
   * Returns what is certain of a fact that the earlier examination states in the other way, beyond
   * the widest limit of repeated tests.
   */
  static Optional<Statement> of(Fact<?> now, Exam earlier, Exam later) {
    EyeView before = earlier.view().eye(now.site());
    if (now.finding() == Acuities.BOUND) {
      return value(now, AcuityBound.class)
          .filter(limit -> !isReadToo(later.view().eye(now.site()), limit))
          .flatMap(
              limit ->
                  only(readings(before, limit.correction()))
                      .flatMap(reading -> toBound(reading, limit)));
    }
    return value(now, AcuityReading.class)
        .filter(any -> now.finding() == Acuities.DISTANCE)
        .flatMap(
            reading ->
                only(limits(before, reading.correction()))
                    .flatMap(limit -> fromBound(limit, reading)));
  }

  private static <V> Optional<V> value(Fact<?> fact, Class<V> kind) {
    return fact.outcome().ifFound().filter(kind::isInstance).map(kind::cast);
  }

  private static boolean isReadToo(EyeView eye, AcuityBound limit) {
    return readings(eye, limit.correction()).findAny().isPresent();
  }

  private static Stream<AcuityReading> readings(EyeView eye, Optional<Correction> worn) {
    return eye.seen(Acuities.DISTANCE, one -> one.correction().equals(worn)).map(Seen::value);
  }

  private static Stream<AcuityBound> limits(EyeView eye, Optional<Correction> worn) {
    return eye.seen(Acuities.BOUND, one -> one.correction().equals(worn)).map(Seen::value);
  }

  private static <V> Optional<V> only(Stream<V> some) {
    List<V> all = some.toList();
    return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
  }

  private static Optional<Statement> toBound(AcuityReading reading, AcuityBound limit) {
    String change = "From %s to %s".formatted(reading.words(), words(limit));
    return apart(reading, limit).stream()
        .mapToObj(apart -> statement(change, limit.isWorse() ? apart : -apart, limit.isWorse()))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<Statement> fromBound(AcuityBound limit, AcuityReading reading) {
    String change = "From %s to %s".formatted(words(limit), reading.words());
    return apart(reading, limit).stream()
        .mapToObj(apart -> statement(change, limit.isWorse() ? apart : -apart, !limit.isWorse()))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<Statement> statement(String change, double atLeast, boolean worse) {
    String how = worse ? "worse" : "better";
    return atLeast > MOST
        ? Optional.of(
            new Statement(
                "acuity.change",
                "%s: %s by more than the test-retest limit.".formatted(change, how),
                List.of("limit " + RetestLimit.LINES.words()),
                Certainty.BY_RULE,
                RetestLimit.LINES.source()))
        : Optional.empty();
  }

  /** Returns how far the line of the limit is above the acuity in logMAR: less is better. */
  private static OptionalDouble apart(AcuityReading reading, AcuityBound limit) {
    OptionalDouble line = AcuityScale.logMar(limit.line());
    Optional<Double> read = PartialLine.logMar(reading).value().map(Number::doubleValue);
    return line.isPresent() && read.isPresent()
        ? OptionalDouble.of(line.getAsDouble() - read.get())
        : OptionalDouble.empty();
  }

  private static String words(AcuityBound limit) {
    return (limit.isWorse() ? "worse than " : "better than ") + limit.line();
  }
}
