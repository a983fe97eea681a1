package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;

/** Near print as an angle: M units with a distance are one; N points and Jaeger types are not. */
public final class NearAcuity {

  /**
   * Print in M units at a distance.
   *
   * @param heightMm the height of the letters in mm, to 0.01
   * @param decimal the decimal acuity, to 0.001
   * @param logMar the logMAR, to 0.001
   */
  public record Equivalents(BigDecimal heightMm, BigDecimal decimal, BigDecimal logMar) {}

  private static final Citation M_UNITS =
      new Citation("1 M subtends five minutes of arc at 1 m: Precision Vision; type-size study");

  private static final Citation POINTS =
      new Citation(
          "0.4 M N3, 0.8 M N6, 1 M N8, 1.6 M N12, 2 M N16, 4 M N32: lecture table; other rows from"
              + " memory; N is a nominal size of print, not an angle");

  private static final Map<BigDecimal, Integer> NOMINAL = new TreeMap<>();

  static {
    // Sorted by value: 0.8 and 0.80 are one size.
    Map.of("0.4", 3, "0.5", 4, "0.6", 5, "0.8", 6, "1", 8, "1.25", 10, "1.6", 12, "2", 16, "4", 32)
        .forEach((size, points) -> NOMINAL.put(new BigDecimal(size), points));
  }

  private NearAcuity() {}

  /**
   * Returns what print in M units is at a distance.
   *
   * @param print the print read
   * @param distance the reading distance; without it the size is no angle
   */
  public static Answer<Equivalents> of(Acuity.MUnits print, Optional<Quantity> distance) {
    StatementBuilder topic =
        StatementBuilder.of(
            "near.equivalents",
            M_UNITS,
            "near acuity " + print,
            "reading distance " + distance.map(Quantity::toString).orElse("not stated"));
    Optional<Double> metres = distance.flatMap(Numbers::metres).map(BigDecimal::doubleValue);
    return metres
        .filter(far -> far > 0 && print.size().signum() > 0)
        .map(far -> given(topic, print, far))
        .orElseGet(() -> topic.withheld("Print is an angle only at a stated reading distance."));
  }

  /** Returns the N points that are printed beside an M size; withheld for a size not listed. */
  public static Answer<Integer> points(Acuity.MUnits print) {
    StatementBuilder topic = StatementBuilder.of("near.points", POINTS, "near acuity " + print);
    return Optional.ofNullable(NOMINAL.get(print.size()))
        .map(
            points ->
                topic.given(
                    points,
                    Certainty.BY_CONVENTION,
                    "%s is nominally N%s; N is a size of print.".formatted(print, points)))
        .orElseGet(() -> topic.withheld("No N size is published beside " + print + "."));
  }

  /** Says that a Jaeger type does not convert: its steps differ between printers. */
  public static Answer<Equivalents> of(Acuity.Jaeger print) {
    return StatementBuilder.of("near.jaeger", Citation.COMMON_PRACTICE, "near acuity " + print)
        .withheld(print + " converts to no other size: Jaeger cards differ between printers.");
  }

  private static Answer<Equivalents> given(
      StatementBuilder topic, Acuity.MUnits print, double metres) {
    double size = print.size().doubleValue();
    double logMar = Math.log10(size / metres);
    Equivalents same =
        new Equivalents(
            VisualAngle.sizeMm(5, size * 1000),
            Numbers.round(metres / size, 3),
            Numbers.round(logMar, 3));
    String text =
        "%s at %s m is %s logMAR.".formatted(print, Numbers.round(metres, 2), same.logMar());
    return topic.given(same, Certainty.COMPUTED, text);
  }
}
