package org.isopter.model.simulate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Writes an acuity in logMAR the way a chart of a notation shows it. */
final class AcuityLines {

  private static final List<Integer> METRES = List.of(5, 6, 9, 12, 18, 24, 36, 60);
  private static final List<Integer> FEET = List.of(15, 20, 25, 30, 40, 50, 70, 100, 200);
  private static final Quantity SIX_METRES = Quantity.of("6", Unit.METRE);
  private static final Quantity FOUR_METRES = Quantity.of("4", Unit.METRE);
  private static final Quantity TWENTY_FEET = Quantity.of("20", Unit.FOOT);

  private AcuityLines() {}

  static AcuityReading reading(double logMar, Notation notation) {
    return switch (Vision.of(logMar)) {
      case CHART -> chart(logMar, notation);
      case FINGERS -> low(LowVision.COUNTING_FINGERS, logMar > 1.4 ? "0.5" : "2");
      case HAND -> low(LowVision.HAND_MOVEMENTS, "0.5");
      case LIGHT -> AcuityReading.of(new Acuity.Low(LowVision.LIGHT_PERCEPTION, Optional.empty()));
      case NONE ->
          AcuityReading.of(new Acuity.Low(LowVision.NO_LIGHT_PERCEPTION, Optional.empty()));
    };
  }

  private static AcuityReading low(LowVision category, String metres) {
    return AcuityReading.of(new Acuity.Low(category, Optional.of(Quantity.of(metres, Unit.METRE))));
  }

  private static AcuityReading chart(double logMar, Notation notation) {
    return switch (notation) {
      case METRIC ->
          AcuityReading.of(line(logMar, 6, METRES, Unit.METRE)).on(Chart.SNELLEN).from(SIX_METRES);
      case IMPERIAL ->
          AcuityReading.of(line(logMar, 20, FEET, Unit.FOOT)).on(Chart.SNELLEN).from(TWENTY_FEET);
      case DECIMAL ->
          AcuityReading.of(
                  new Acuity.DecimalFraction(WrittenNumbers.digits(Math.pow(10, -logMar), 2)))
              .on(Chart.SNELLEN)
              .from(SIX_METRES);
      case LOGMAR ->
          AcuityReading.of(new Acuity.LogMar(WrittenNumbers.stepped(logMar, 0.02, 2)))
              .on(Chart.LOGMAR)
              .from(FOUR_METRES);
      case LETTERS ->
          AcuityReading.of(new Acuity.Letters((int) Math.rint(85 - 50 * logMar)))
              .on(Chart.ETDRS)
              .from(FOUR_METRES);
    };
  }

  private static Acuity line(double logMar, int distance, List<Integer> lines, Unit unit) {
    int nearest = lines.get(0);
    for (int line : lines) {
      if (rest(logMar, line, distance) > rest(logMar, nearest, distance)) {
        nearest = line;
      }
    }
    return new Acuity.Fraction(
        BigDecimal.valueOf(distance),
        BigDecimal.valueOf(nearest),
        unit,
        letters(logMar - Math.log10((double) nearest / distance), nearest, distance));
  }

  /** Returns the closeness of an acuity to a line: 0 at best. */
  private static double rest(double logMar, int line, int distance) {
    return -Math.abs(logMar - Math.log10((double) line / distance));
  }

  /** Returns the letters beyond a line or missed on it; a short line has none. */
  private static int letters(double worse, int line, int distance) {
    // A line of 6/18 or better has at least four letters on the usual chart.
    int most = line <= 2 * distance ? 2 : line <= 3 * distance ? 1 : 0;
    return Math.max(-most, Math.min(most, (int) Math.rint(-worse / 0.02)));
  }
}
