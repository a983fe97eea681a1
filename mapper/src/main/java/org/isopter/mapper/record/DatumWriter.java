package org.isopter.mapper.record;

import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** Writes a single value. */
final class DatumWriter implements Datum.Cases<JsonNode> {

  static final DatumWriter INSTANCE = new DatumWriter();

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private DatumWriter() {}

  @Override
  public JsonNode measure(Datum.Measure measure) {
    return measure.unit().text().isEmpty() ? NODES.numberNode(measure.value()) : written(measure);
  }

  @Override
  public JsonNode count(Datum.Count count) {
    return NODES.numberNode(count.value());
  }

  @Override
  public JsonNode coded(Datum.Coded coded) {
    return written(coded);
  }

  @Override
  public JsonNode truth(Datum.Truth truth) {
    return NODES.booleanNode(truth.value());
  }

  @Override
  public JsonNode text(Datum.Text text) {
    return written(text);
  }

  @Override
  public JsonNode ratio(Datum.Ratio ratio) {
    return written(ratio);
  }

  private static JsonNode written(Datum datum) {
    return NODES.stringNode(DatumTexts.of(datum));
  }
}
