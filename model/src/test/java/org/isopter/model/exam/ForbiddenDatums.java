package org.isopter.model.exam;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Unit;

/** Data that a spec forbids: another kind, unit, answer or length, out of range, too fine. */
final class ForbiddenDatums implements Spec.Cases<List<Datum>> {

  private static final Unit KILOPASCAL = new Unit("kPa", "kPa");
  private static final Datum WORDS = new Datum.Text("about the usual");

  @Override
  public List<Datum> measure(Spec.Measure spec) {
    List<Datum> wrong = new ArrayList<>(List.of(WORDS, new Datum.Count(1)));
    for (Span span : spec.spans()) {
      numbers(span, spec.decimals())
          .forEach(number -> wrong.add(new Datum.Measure(number, span.unit())));
      wrong.add(new Datum.Measure(span.least(), KILOPASCAL));
    }
    return wrong;
  }

  /** Returns one number below the span, one above it, and one within it that is too fine. */
  private static List<BigDecimal> numbers(Span span, int decimals) {
    BigDecimal step = BigDecimal.ONE.movePointLeft(decimals);
    BigDecimal fine = span.least().add(BigDecimal.ONE.movePointLeft(decimals + 1));
    return List.of(span.least().subtract(step), span.most().add(step), fine);
  }

  @Override
  public List<Datum> count(Spec.Count spec) {
    return List.of(WORDS, new Datum.Count(spec.least() - 1), new Datum.Count(spec.most() + 1));
  }

  @Override
  public List<Datum> coded(Spec.Coded spec) {
    return List.of(WORDS, new Datum.Truth(true), new Datum.Coded(Absence.MASKED));
  }

  @Override
  public List<Datum> truth(Spec.Truth spec) {
    return List.of(WORDS, new Datum.Count(1));
  }

  @Override
  public List<Datum> text(Spec.Text spec) {
    return List.of(
        new Datum.Count(1),
        new Datum.Text(" "),
        new Datum.Text("two\u0000words"),
        new Datum.Text("a".repeat(spec.longest() + 1)));
  }

  @Override
  public List<Datum> ratio(Spec.Ratio spec) {
    List<Datum> wrong = new ArrayList<>(List.of(WORDS));
    BigDecimal whole = spec.denominator().most();
    BigDecimal part = spec.numerator().least();
    wrong.add(new Datum.Ratio(part, whole, KILOPASCAL));
    numbers(spec.numerator(), spec.decimals())
        .forEach(number -> wrong.add(new Datum.Ratio(number, whole, spec.unit())));
    numbers(spec.denominator(), spec.decimals())
        .forEach(number -> wrong.add(new Datum.Ratio(part, number, spec.unit())));
    return wrong;
  }
}
