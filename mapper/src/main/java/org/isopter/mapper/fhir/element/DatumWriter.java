package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.util.List;
import org.isopter.model.finding.Datum;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;
import org.isopter.model.wire.ObservationMember;
import org.isopter.model.wire.ValueType;

/** Writes a datum as the {@code value[x]} of an observation or a component. */
public final class DatumWriter implements Datum.Cases<Json> {

  private final Json json;

  public DatumWriter(Json json) {
    this.json = json;
  }

  @Override
  public Json measure(Datum.Measure measure) {
    json.object(ValueType.of(measure).member(), () -> quantity(measure.value(), measure.unit()));
    return json;
  }

  @Override
  public Json count(Datum.Count count) {
    json.number(ValueType.of(count).member(), BigDecimal.valueOf(count.value()));
    return json;
  }

  @Override
  public Json coded(Datum.Coded coded) {
    json.concept(ValueType.of(coded).member(), coded.concept().code());
    return json;
  }

  @Override
  public Json truth(Datum.Truth truth) {
    json.truth(ValueType.of(truth).member(), truth.value());
    return json;
  }

  @Override
  public Json text(Datum.Text text) {
    json.text(ValueType.of(text).member(), text.value());
    return json;
  }

  @Override
  public Json ratio(Datum.Ratio ratio) {
    json.object(
        ValueType.of(ratio).member(),
        () -> {
          json.object("numerator", () -> quantity(ratio.numerator(), ratio.unit()));
          json.object("denominator", () -> quantity(ratio.denominator(), ratio.unit()));
        });
    return json;
  }

  private void quantity(BigDecimal value, Unit unit) {
    json.number("value", value);
    json.constant("unit", unit.label());
    json.constant("system", Code.UCUM);
    json.constant("code", unit.ucum());
  }

  /** Writes why there is no value. */
  public static void absent(Json json, Code reason) {
    json.object(ObservationMember.ABSENT_REASON.label(), () -> json.codings(List.of(reason)));
  }
}
