package org.isopter.mapper.json;

import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultPrettyPrinter;

/**
 * Reads JSON into {@link Raw} values and writes them again. An address that we published under a
 * former name is read as the one that it has now.
 */
public final class RawJson {

  /** Reads what this package wrote itself. */
  public static final RawJson OWN = new RawJson(Limits.USUAL);

  private static final JsonFactory WRITER = new JsonFactory();

  private final JsonFactory factory;

  /** Makes a reader of JSON within limits. */
  public RawJson(Limits limits) {
    factory =
        JsonFactory.builder()
            // Of two members with one name, one would be lost.
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .streamReadConstraints(
                StreamReadConstraints.builder()
                    .maxNestingDepth(limits.depth())
                    .maxStringLength(limits.stringLength())
                    .maxDocumentLength(limits.documentLength())
                    .build())
            .build();
  }

  /** Reads one document in UTF-8, UTF-16 or UTF-32; a fault's path is its line and column. */
  public Result<Raw> read(byte[] json) {
    return read(() -> factory.createParser(ObjectReadContext.empty(), json));
  }

  /** Reads one document; a fault's path is its line and column. */
  public Result<Raw> read(String json) {
    return read(() -> factory.createParser(ObjectReadContext.empty(), json));
  }

  /** Returns a value as JSON on one line; numbers are written as they were read. */
  public static String write(Raw value) {
    return RawText.of(value);
  }

  /** Returns a value as JSON with a member on each line; numbers are written as they were read. */
  public static String indented(Raw value) {
    StringWriter text = new StringWriter();
    ObjectWriteContext lines =
        new ObjectWriteContext.Base() {
          @Override
          public PrettyPrinter getPrettyPrinter() {
            return new DefaultPrettyPrinter();
          }

          @Override
          public boolean hasPrettyPrinter() {
            return true;
          }
        };
    try (JsonGenerator out = WRITER.createGenerator(lines, text)) {
      write(value, out);
    }
    return text.toString();
  }

  /** Writes a value to a generator. */
  static void write(Raw value, JsonGenerator out) {
    if (value instanceof Raw.Obj object) {
      out.writeStartObject();
      object
          .members()
          .forEach(
              (name, child) -> {
                out.writeName(name);
                write(child, out);
              });
      out.writeEndObject();
    } else if (value instanceof Raw.Arr list) {
      out.writeStartArray();
      list.items().forEach(item -> write(item, out));
      out.writeEndArray();
    } else {
      write((Raw.Leaf) value, out);
    }
  }

  private static void write(Raw.Leaf leaf, JsonGenerator out) {
    if (leaf.kind() == Raw.Kind.STRING) {
      out.writeString(leaf.text());
    } else {
      out.writeRawValue(leaf.text());
    }
  }

  private static Result<Raw> read(Supplier<JsonParser> open) {
    try (JsonParser parser = open.get()) {
      if (parser.nextToken() == null) {
        return Result.refused(Fault.of("line 1, column 1", "nothing", "a JSON document"));
      }
      Raw value = value(parser);
      if (parser.nextToken() != null) {
        return Result.refused(
            Fault.of(
                JsonTrouble.place(parser.currentTokenLocation()),
                "a second value",
                "one JSON document"));
      }
      return Result.ok(value);
    } catch (JacksonException broken) {
      return Result.refused(JsonTrouble.fault(broken, "split the document, or raise the limit"));
    }
  }

  private static Raw value(JsonParser parser) {
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> object(parser);
      case START_ARRAY -> list(parser);
      case VALUE_STRING -> Raw.of(Canonical.current(parser.getString()));
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
          new Raw.Leaf(Raw.Kind.NUMBER, parser.getString());
      case VALUE_TRUE, VALUE_FALSE -> new Raw.Leaf(Raw.Kind.TRUTH, parser.getString());
      default -> new Raw.Leaf(Raw.Kind.NULL, "null");
    };
  }

  private static Raw object(JsonParser parser) {
    Members.Draft members = new Members.Draft();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String name = parser.currentName();
      parser.nextToken();
      members.add(name, value(parser));
    }
    return new Raw.Obj(members.members());
  }

  private static Raw list(JsonParser parser) {
    List<Raw> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(parser));
    }
    return new Raw.Arr(items);
  }
}
