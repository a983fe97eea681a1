package org.isopter.mapper.fhir.element;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import org.isopter.model.value.Code;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/**
 * Codes as the bytes that we write for them, so that what stands there as it was written is
 * recognised without taking it apart: as many as a catalogue has.
 */
final class WrittenJson {

  private static final JsonFactory FACTORY = new JsonFactory();
  private static final Map<Code, byte[]> CODINGS = new ConcurrentHashMap<>();
  private static final Map<Code, byte[]> CONCEPTS = new ConcurrentHashMap<>();

  private WrittenJson() {}

  /** Returns a coding. */
  static byte[] coding(Code code) {
    return of(CODINGS, code, Json::coding);
  }

  /** Returns a concept of that coding alone. */
  static byte[] concept(Code code) {
    return of(CONCEPTS, code, (json, one) -> json.element(() -> json.codings(List.of(one))));
  }

  private static byte[] of(Map<Code, byte[]> known, Code code, BiConsumer<Json, Code> write) {
    byte[] bytes = known.get(code);
    return bytes == null ? known.computeIfAbsent(code, any -> bytes(code, write)) : bytes;
  }

  private static byte[] bytes(Code code, BiConsumer<Json, Code> write) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator out = FACTORY.createGenerator(ObjectWriteContext.empty(), bytes)) {
      write.accept(new Json(new GeneratorSink(out, false), PatientReference.NONE), code);
    }
    return bytes.toByteArray();
  }
}
