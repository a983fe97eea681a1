package org.isopter.model.finding;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.value.Fault;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Unit;

/** Checks a datum against its spec; the fault's path is left empty for the caller to fill. */
final class SpecCheck implements Spec.Cases<Optional<Fault>> {

  private final Datum datum;

  private SpecCheck(Datum datum) {
    this.datum = datum;
  }

  /** Returns what is wrong with the datum, or nothing. */
  static Optional<Fault> check(Spec spec, Datum datum) {
    return spec.fold(new SpecCheck(datum));
  }

  @Override
  public Optional<Fault> measure(Spec.Measure spec) {
    if (!(datum instanceof Datum.Measure measure)) {
      return otherKind(spec);
    }
    for (Span span : spec.spans()) {
      if (span.unit().equals(measure.unit())) {
        return inSpan(measure.value(), span, spec.decimals(), measure);
      }
    }
    return fault(DatumTexts.of(measure), "a number in " + units(spec));
  }

  @Override
  public Optional<Fault> count(Spec.Count spec) {
    if (!(datum instanceof Datum.Count count)) {
      return otherKind(spec);
    }
    boolean fits = count.value() >= spec.least() && count.value() <= spec.most();
    return fits ? Optional.empty() : fault(DatumTexts.of(count), DatumTexts.wanted(spec));
  }

  @Override
  public Optional<Fault> coded(Spec.Coded spec) {
    if (!(datum instanceof Datum.Coded coded)) {
      return otherKind(spec);
    }
    boolean fits = spec.answers().concepts().contains(coded.concept());
    return fits ? Optional.empty() : fault(DatumTexts.of(coded), DatumTexts.wanted(spec));
  }

  @Override
  public Optional<Fault> truth(Spec.Truth spec) {
    return datum instanceof Datum.Truth ? Optional.empty() : otherKind(spec);
  }

  @Override
  public Optional<Fault> text(Spec.Text spec) {
    if (!(datum instanceof Datum.Text text)) {
      return otherKind(spec);
    }
    return text.value().length() <= spec.longest()
        ? TextCheck.check(text.value())
        : fault(DatumTexts.of(text), DatumTexts.wanted(spec));
  }

  @Override
  public Optional<Fault> ratio(Spec.Ratio spec) {
    if (!(datum instanceof Datum.Ratio ratio)) {
      return otherKind(spec);
    }
    if (!ratio.unit().equals(spec.unit())) {
      return fault(DatumTexts.of(ratio), "a ratio in " + spec.unit().label());
    }
    if (spec.proper() && ratio.numerator().compareTo(ratio.denominator()) > 0) {
      return fault(DatumTexts.of(ratio), "a numerator of at most the denominator");
    }
    return inSpan(ratio.numerator(), spec.numerator(), spec.decimals(), ratio)
        .or(() -> inSpan(ratio.denominator(), spec.denominator(), spec.decimals(), ratio));
  }

  private static Optional<Fault> inSpan(BigDecimal value, Span span, int decimals, Datum seen) {
    if (!span.holds(value)) {
      return fault(DatumTexts.of(seen), span.toString());
    }
    return value.scale() <= decimals
        ? Optional.empty()
        : fault(
            DatumTexts.of(seen),
            decimals == 1 ? "at most one decimal" : "at most " + decimals + " decimals");
  }

  private Optional<Fault> otherKind(Spec spec) {
    return fault(DatumTexts.of(datum), DatumTexts.wanted(spec));
  }

  private static String units(Spec.Measure spec) {
    return spec.spans().stream()
        .map(Span::unit)
        .map(Unit::label)
        .collect(Collectors.joining(" or "));
  }

  private static Optional<Fault> fault(String seen, String wanted) {
    return Optional.of(Fault.of("", seen, wanted));
  }
}
