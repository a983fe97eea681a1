package org.isopter.model.clinical.impairment;

import java.math.BigDecimal;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Unit;

/**
 * One edge of a rule set as it is printed in each notation: 6/18, 0.3, 20/70 and 0.5 logMAR are one
 * edge, although their angles differ. An acuity is held against the edge in its own notation. As
 * 6/19 is a name of the line of 0.5 logMAR, a fraction reaches the printed logMAR within 0.002; a
 * decimal is the number it is, so that 0.49 does not reach 0.5.
 *
 * @param metres the edge as a fraction in metres
 * @param decimal the edge as a decimal
 * @param feet the edge as a fraction in feet
 * @param four the edge as a fraction at four metres
 * @param logMar the edge as a logMAR
 */
public record VisionEdge(
    Acuity.Fraction metres,
    Acuity.DecimalFraction decimal,
    Acuity.Fraction feet,
    Acuity.Fraction four,
    Acuity.LogMar logMar) {

  private static final BigDecimal FOUR = BigDecimal.valueOf(4);
  private static final double ROUNDING = 1e-9;

  /** What the fraction that names a line may differ by from its step of 0.1. */
  private static final double NAMED = 0.002;

  static VisionEdge of(String metres, String decimal, String feet, String four, String logMar) {
    return new VisionEdge(
        fraction(metres, Unit.METRE),
        new Acuity.DecimalFraction(new BigDecimal(decimal)),
        fraction(feet, Unit.FOOT),
        fraction(four, Unit.METRE),
        new Acuity.LogMar(new BigDecimal(logMar)));
  }

  /** Reads an edge of which the five forms stand in order, with a space between. */
  static VisionEdge parse(String forms) {
    String[] form = forms.split(" ", -1);
    return of(form[0], form[1], form[2], form[3], form[4]);
  }

  private static Acuity.Fraction fraction(String text, Unit unit) {
    return (Acuity.Fraction) AcuityText.parse(text + " " + unit.text()).orThrow();
  }

  /** Says whether an acuity, worse by so much logMAR, reaches the edge; a suffix is left out. */
  boolean isReachedBy(Acuity acuity, double worse) {
    double seen = AcuityScale.logMar(acuity).orElse(Double.POSITIVE_INFINITY) + worse;
    boolean named = acuity instanceof Acuity.Fraction;
    return seen <= limit(acuity) + ROUNDING || (named && seen <= angle(logMar) + NAMED);
  }

  private double limit(Acuity acuity) {
    if (acuity instanceof Acuity.Fraction line) {
      return angle(inNotation(line));
    }
    return acuity instanceof Acuity.DecimalFraction ? angle(decimal) : angle(logMar);
  }

  private Acuity inNotation(Acuity.Fraction line) {
    if (line.unit().equals(Unit.FOOT)) {
      return feet;
    }
    return line.numerator().compareTo(FOUR) == 0 ? four : metres;
  }

  private static double angle(Acuity edge) {
    return AcuityScale.logMar(edge).orElseThrow();
  }
}
