package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;
import org.isopter.model.wire.ValueType;

/** Takes the {@code value[x]} of an observation or a component, as its spec wants it. */
public final class DatumReader implements Spec.Cases<Optional<Datum>> {

  private final ElementCursor holder;

  public DatumReader(ElementCursor holder) {
    this.holder = holder;
  }

  @Override
  public Optional<Datum> measure(Spec.Measure spec) {
    return holder
        .required(ValueType.of(spec).member())
        .flatMap(quantity -> measure(quantity, spec));
  }

  @Override
  public Optional<Datum> count(Spec.Count spec) {
    return present(spec, holder::integer, Datum.Count::new);
  }

  @Override
  public Optional<Datum> coded(Spec.Coded spec) {
    return Codings.oneOf(holder, ValueType.of(spec).member(), spec.answers()).map(Datum.Coded::new);
  }

  @Override
  public Optional<Datum> truth(Spec.Truth spec) {
    return present(spec, holder::truth, Datum.Truth::new);
  }

  @Override
  public Optional<Datum> text(Spec.Text spec) {
    return present(spec, holder::text, Datum.Text::new);
  }

  @Override
  public Optional<Datum> ratio(Spec.Ratio spec) {
    Optional<ElementCursor> ratio = holder.required(ValueType.of(spec).member());
    Optional<BigDecimal> numerator = ratio.flatMap(r -> side(r, "numerator", spec.unit()));
    Optional<BigDecimal> denominator = ratio.flatMap(r -> side(r, "denominator", spec.unit()));
    return numerator.flatMap(
        over -> denominator.map(under -> new Datum.Ratio(over, under, spec.unit())));
  }

  private <T> Optional<Datum> present(
      Spec spec, Function<String, Optional<T>> take, Function<T, Datum> make) {
    String name = ValueType.of(spec).member();
    Optional<Datum> datum = take.apply(name).map(make);
    if (datum.isEmpty()) {
      holder.fault(name, "nothing readable", "an element of that name");
    }
    return datum;
  }

  private static Optional<Datum> measure(ElementCursor quantity, Spec.Measure spec) {
    Optional<BigDecimal> value = value(quantity);
    Optional<Unit> unit = unit(quantity, spec);
    return value.flatMap(number -> unit.map(known -> new Datum.Measure(number, known)));
  }

  private static Optional<BigDecimal> side(ElementCursor ratio, String name, Unit unit) {
    Optional<ElementCursor> quantity = ratio.required(name);
    quantity.ifPresent(
        side -> {
          side.expect("system", Code.UCUM);
          unitCode(side, unit);
          side.expect("unit", unit.label());
        });
    return quantity.flatMap(DatumReader::value);
  }

  /** Takes the code of a unit, as it is or as earlier versions wrote it. */
  public static void unitCode(ElementCursor quantity, Unit unit) {
    String code = quantity.text("code").orElse("");
    if (!unit.isCoded(code)) {
      String seen = code.isEmpty() ? "nothing" : "\"" + code + "\"";
      quantity.fault("code", seen, "\"" + unit.ucum() + "\"");
    }
  }

  private static Optional<Unit> unit(ElementCursor quantity, Spec.Measure spec) {
    quantity.expect("system", Code.UCUM);
    String code = quantity.text("code").orElse("");
    for (Span span : spec.spans()) {
      if (span.unit().isCoded(code)) {
        quantity.expect("unit", span.unit().label());
        return Optional.of(span.unit());
      }
    }
    quantity.drop("unit");
    quantity.fault("code", code.isEmpty() ? "nothing" : "\"" + code + "\"", units(spec));
    return Optional.empty();
  }

  private static String units(Spec.Measure spec) {
    return String.join(
        " or ", spec.spans().stream().map(span -> "\"" + span.unit().ucum() + "\"").toList());
  }

  private static Optional<BigDecimal> value(ElementCursor quantity) {
    Optional<BigDecimal> value = quantity.number("value");
    if (value.isEmpty()) {
      quantity.fault("value", "nothing readable", "a number");
    }
    return value;
  }
}
