package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;

/**
 * The span of logMAR within which a reading lies. It is one point where the reading is a full line
 * or its letters count; a line read in part and a suffix without a value reach at most to the next
 * line, and no line of a usual chart is more than a factor of two from the next (20/100 to 20/200;
 * common practice, no source).
 *
 * @param best the best logMAR it may stand for
 * @param worst the worst logMAR it may stand for
 */
record LogMarInterval(double best, double worst) {

  private static final double NEXT_LINE = Math.log10(2);

  /** Returns the reach, named lines at their nominal value; nothing where there is no logMAR. */
  static Optional<LogMarInterval> of(AcuityReading reading) {
    int suffix = AcuityScale.suffix(reading);
    Optional<BigDecimal> exact =
        suffix == 0 ? Optional.empty() : PartialLine.logMar(reading).value();
    if (exact.isPresent()) {
      return exact.map(value -> point(value.doubleValue()));
    }
    return AcuityScale.logMar(reading.acuity()).stream()
        .mapToObj(line -> NominalLine.near(line).map(LogMarInterval::nominal).orElse(line))
        .map(line -> around(line, suffix))
        .findFirst();
  }

  private static double nominal(NominalLine line) {
    return line.logMar().doubleValue();
  }

  private static LogMarInterval point(double logMar) {
    return new LogMarInterval(logMar, logMar);
  }

  private static LogMarInterval around(double line, int suffix) {
    return new LogMarInterval(
        suffix > 0 ? line - NEXT_LINE : line, suffix < 0 ? line + NEXT_LINE : line);
  }

  /** Returns how far this lies from another, positive where this is worse. */
  LogMarInterval minus(LogMarInterval other) {
    return new LogMarInterval(best - other.worst, worst - other.best);
  }

  boolean isPoint() {
    return best == worst;
  }
}
