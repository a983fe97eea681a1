package org.isopter.mapper.json;

import java.io.ByteArrayOutputStream;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.mapper.json.token.JsonTokens;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonWriteFeature;

/** Turns {@link Raw} values into tokens, which the reader of our own form takes apart. */
public final class RawTokens {

  private static final JsonFactory ASCII =
      JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

  private RawTokens() {}

  /** Returns the tokens of an object, its numbers to the digit. */
  @API(status = Status.INTERNAL)
  public static JsonTokens of(Raw.Obj object) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 12);
    try (JsonGenerator out = ASCII.createGenerator(ObjectWriteContext.empty(), bytes)) {
      RawJson.write(object, out);
    }
    return JsonTokens.ofChecked(bytes.toByteArray());
  }
}
