package org.isopter.mapper.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.StringWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** Values are written as another writer of JSON writes them, and read again the same. */
class RawTextTest {

  private static final long SEED = Long.getLong("seed", 20_261_128L);

  @Test
  void escapesWhatTheStandardDemands() {
    // RFC 8259, section 7: quotation mark, reverse solidus, and U+0000 to U+001F.
    for (char each = 0; each < 0x180; each++) {
      assertSame(Raw.of("a" + each + "b"), "character " + (int) each);
    }
  }

  @Test
  void writesAnyValueAsAnotherWriterDoes() {
    Random random = new Random(SEED);
    for (int i = 0; i < 3_000; i++) {
      assertSame(value(random, 0), "seed " + SEED + ", value " + i);
    }
  }

  private static void assertSame(Raw value, String name) {
    String json = RawJson.write(value);
    assertEquals(other(value), json, name);
    assertEquals(value, RawJson.OWN.read(json).orThrow(), name);
  }

  private static String other(Raw value) {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = new JsonFactory().createGenerator(ObjectWriteContext.empty(), text)) {
      RawJson.write(value, out);
    }
    return text.toString();
  }

  private static Raw value(Random random, int depth) {
    return switch (random.nextInt(depth > 4 ? 4 : 7)) {
      case 0, 1 -> Raw.of(text(random));
      case 2 -> new Raw.Leaf(Raw.Kind.NUMBER, random.nextInt(100) + ".50");
      case 3 -> new Raw.Leaf(Raw.Kind.TRUTH, "true");
      case 4 -> {
        List<Raw> items = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
          items.add(value(random, depth + 1));
        }
        yield Raw.of(items);
      }
      default -> {
        Map<String, Raw> members = new LinkedHashMap<>();
        for (int i = random.nextInt(20); i > 0; i--) {
          members.put(text(random), value(random, depth + 1));
        }
        yield new Raw.Obj(members);
      }
    };
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(12); i > 0; i--) {
      text.appendCodePoint("a\"\\/\n\u0001é\u2028语".codePointAt(random.nextInt(9)));
    }
    return random.nextInt(5) == 0 ? text + "\uD83D\uDE00" : text.toString();
  }
}
