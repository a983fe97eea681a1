package org.isopter.mapper.record;

import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;

/** Writes a single value. */
final class DatumWriter implements Datum.Cases<Object> {

  static final DatumWriter INSTANCE = new DatumWriter();

  private DatumWriter() {}

  @Override
  public Object measure(Datum.Measure measure) {
    return measure.unit().text().isEmpty() ? measure.value() : written(measure);
  }

  @Override
  public Object count(Datum.Count count) {
    return count.value();
  }

  @Override
  public Object coded(Datum.Coded coded) {
    return written(coded);
  }

  @Override
  public Object truth(Datum.Truth truth) {
    return truth.value();
  }

  @Override
  public Object text(Datum.Text text) {
    return written(text);
  }

  @Override
  public Object ratio(Datum.Ratio ratio) {
    return written(ratio);
  }

  private static Object written(Datum datum) {
    return DatumTexts.of(datum);
  }
}
