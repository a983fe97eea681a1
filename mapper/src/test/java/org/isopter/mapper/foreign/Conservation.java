package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/**
 * The law of conservation: what was taken and what is left over together are the input, to the leaf
 * and to the digit. The witness counts the input's own tokens and knows none of our classes.
 */
public final class Conservation {

  private static final JsonFactory JSON = new JsonFactory();

  private Conservation() {}

  /** Reads a document and checks it. */
  public static void check(ForeignReader reader, String name, String json) {
    check(reader.read(json).orThrow(), name, json);
  }

  /** Checks a document that was read. */
  public static void check(Reading reading, String name, String json) {
    List<String> out = new ArrayList<>();
    for (ReadResource read : reading.resources()) {
      if (read.outcome() instanceof ResourceOutcome.Translated translated) {
        translated.taken().forEach(taken -> out.add(read.at() + taken.leaf()));
        translated.leftover().forEach(leaf -> out.add(read.at() + leaf));
      } else {
        read.resource().leaves().forEach(leaf -> out.add(read.at() + leaf));
      }
    }
    frame(reading).forEach(element -> element(element, out));
    out.sort(null);
    List<String> in = leaves(json);
    in.sort(null);
    assertEquals(String.join("\n", in), String.join("\n", out), name);
  }

  private static List<PlacedLeaf> frame(Reading reading) {
    boolean document = reading.resources().stream().anyMatch(r -> r.at().isEmpty());
    List<PlacedLeaf> frame = new ArrayList<>();
    if (!document) {
      reading.exams().forEach(exam -> frame.addAll(exam.carried().frame()));
      frame.addAll(reading.carried().frame());
    }
    return frame;
  }

  private static void element(PlacedLeaf element, List<String> out) {
    element.value().leaves().forEach(leaf -> out.add(element.at() + leaf));
  }

  /** Counts the leaves of a document by its tokens alone. */
  private static List<String> leaves(String json) {
    List<String> leaves = new ArrayList<>();
    try (JsonParser parser = JSON.createParser(ObjectReadContext.empty(), json)) {
      parser.nextToken();
      walk(parser, "", leaves);
    }
    return leaves;
  }

  private static void walk(JsonParser parser, String at, List<String> leaves) {
    JsonToken token = parser.currentToken();
    if (token == JsonToken.START_OBJECT || token == JsonToken.START_ARRAY) {
      boolean object = token == JsonToken.START_OBJECT;
      int count = 0;
      while (!parser.nextToken().isStructEnd()) {
        String step = Integer.toString(count);
        if (object) {
          step = parser.currentName().replace("~", "~0").replace("/", "~1");
          parser.nextToken();
        }
        walk(parser, at + "/" + step, leaves);
        count++;
      }
      if (count == 0) {
        leaves.add(at + (object ? " {}" : " []"));
      }
    } else {
      String text = parser.getString();
      leaves.add(at + " " + (token == JsonToken.VALUE_STRING ? RawJson.write(Raw.of(text)) : text));
    }
  }
}
