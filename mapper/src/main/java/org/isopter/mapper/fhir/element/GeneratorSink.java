package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.isopter.model.value.Code;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.io.SerializedString;

/**
 * Hands JSON on to a generator.
 *
 * @param out the generator, which stays open
 * @param onOneLine whether it writes text without blanks, of which whole pieces may be handed on
 */
public record GeneratorSink(JsonGenerator out, boolean onOneLine) implements Sink {

  /** Names, codes and displays as they are encoded: as many as a catalogue has. */
  private static final Map<String, SerializedString> ENCODED = new ConcurrentHashMap<>();

  private static final Map<Code, SerializedString> CODINGS = new ConcurrentHashMap<>();

  private static SerializedString encoded(String text) {
    SerializedString known = ENCODED.get(text);
    return known == null ? ENCODED.computeIfAbsent(text, SerializedString::new) : known;
  }

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
    out.writeName(encoded(name));
  }

  @Override
  public void text(String value) {
    out.writeString(value);
  }

  @Override
  public void constant(String value) {
    out.writeString(encoded(value));
  }

  @Override
  public void coding(Code code) {
    if (onOneLine) {
      SerializedString known = CODINGS.get(code);
      out.writeRawValue(
          known == null ? CODINGS.computeIfAbsent(code, GeneratorSink::encoded) : known);
    } else {
      Sink.super.coding(code);
    }
  }

  private static SerializedString encoded(Code code) {
    return new SerializedString(new String(WrittenJson.coding(code), StandardCharsets.UTF_8));
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
