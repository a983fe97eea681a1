package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import tools.jackson.core.JsonGenerator;

/**
 * Hands JSON on to a generator.
 *
 * @param out the generator, which stays open
 */
public record GeneratorSink(JsonGenerator out) implements Sink {

  @Override
  public void startObject() {
    out.writeStartObject();
  }

  @Override
  public void endObject() {
    out.writeEndObject();
  }

  @Override
  public void startList() {
    out.writeStartArray();
  }

  @Override
  public void endList() {
    out.writeEndArray();
  }

  @Override
  public void name(String name) {
    out.writeName(name);
  }

  @Override
  public void text(String value) {
    out.writeString(value);
  }

  @Override
  public void number(BigDecimal value) {
    out.writeNumber(value);
  }

  @Override
  public void truth(boolean value) {
    out.writeBoolean(value);
  }
}
