package org.isopter.mapper.json.token;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.json.RawTokens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is taken without a parser is what a strict parser takes (RFC 8259), value for value. */
class JsonTokensTest {

  private static final RawJson STRICT = new RawJson(new Limits(100, 20_000_000, 500_000_000L));

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        " { \"a\" : [ ] , \"code\" : { } }\n",
        "{\"code\":\"1\",\"display\":\"a\\\"b\\\\c\\/d\\b\\f\\n\\r\\t\\u00e9\\ud83d\\uDE00\"}",
        "{\"valueString\":\"µ 試 😀 \u007f\",\"µ\":1}",
        "{\"a\":[0,-0,1.50,1e2,-0.0E+5,123456789012345678901234567890],\"b\":[true,false,null]}",
        "{\"text\":{\"text\":{\"text\":[{\"text\":1},{\"text\":2}]}}}",
        "{\"resource\":1,\"resourceType\":2,\"\":3,\"resourc\":4,\"resourceTypes\":5,\"c\\u006fde\":6}"
      })
  void takesWhatIsInOrder(String json) {
    Raw strict = STRICT.read(json).orThrow();
    assertEquals(strict, raw(JsonTokens.of(json.getBytes(UTF_8)).orElseThrow()));
    assertEquals(strict, raw(RawTokens.of((Raw.Obj) strict)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "1",
        "{",
        "{\"a\"}",
        "{\"a\":}",
        "{\"a\":1,}",
        "{a:1}",
        "{\"a\":01}",
        "{\"a\":1.}",
        "{\"a\":.5}",
        "{\"a\":+1}",
        "{\"a\":-}",
        "{\"a\":1e}",
        "{\"a\":tru}",
        "{\"a\":nul}",
        "{\"a\":NaN}",
        "{\"a\":\"\\x\"}",
        "{\"a\":\"\\u12g4\"}",
        "{\"a\":\"\t\"}",
        "{\"a\":\"b}",
        "{\"a\":1}{}",
        "{\"a\":1} x",
        "{\"a\":1,\"a\":2}",
        "{\"code\":1,\"code\":2}",
        "{\"code\":{\"text\":1},\"a\":2,\"c\\u006fde\":2}",
        "{\"a\":[1,]}",
        "{\"a\":[1 2]}",
        "{\"a\":[1}",
        "{\"a\":1/**/}"
      })
  void leavesTheRestToAParser(String json) {
    assertEquals(Optional.empty(), JsonTokens.of(json.getBytes(UTF_8)));
  }

  @Test
  void leavesHalfACharacterToAParser() {
    assertEquals(Optional.empty(), JsonTokens.of("{\"a\":\"\u00c3\"}".getBytes(ISO_8859_1)));
  }

  @Test
  void leavesAHundredAndOneLevelsToAParser() {
    String open = "{\"a\":".repeat(99);
    String close = "}".repeat(99);
    assertTrue(JsonTokens.of((open + "[]" + close).getBytes(UTF_8)).isPresent());
    assertTrue(JsonTokens.of((open + "[[]]" + close).getBytes(UTF_8)).isEmpty());
    assertTrue(STRICT.read(open + "[[[]]]" + close).faults().size() == 1);
  }

  @Test
  void takesNothingThatAStrictParserRefusesOrReadsOtherwise() {
    Random random = new Random(20261128);
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), random);
    FhirWriter writer = FhirWriter.of(BundleKind.COLLECTION);
    int taken = 0;
    int left = 0;
    for (int i = 0; i < 6; i++) {
      byte[] whole = writer.write(sampler.next()).getBytes(UTF_8);
      for (int change = 0; change < 400; change++) {
        byte[] json = changed(whole, random);
        Optional<JsonTokens> tokens = JsonTokens.of(json);
        if (tokens.isPresent()) {
          assertEquals(STRICT.read(json).orThrow(), raw(tokens.get()));
          taken++;
        } else {
          left++;
        }
      }
    }
    assertTrue(taken > 100 && left > 100, taken + " taken, " + left + " left");
  }

  private static byte[] changed(byte[] whole, Random random) {
    byte[] json = whole.clone();
    byte[] marks = "\"\\{}[],:0129-.eE+tfnu/ \n\u0000\u0080\u00c3\u00ff".getBytes(ISO_8859_1);
    int at = random.nextInt(json.length);
    json[at] = marks[random.nextInt(marks.length)];
    if (random.nextInt(3) == 0) {
      int length = Math.min(random.nextInt(30), json.length - at);
      System.arraycopy(whole, random.nextInt(json.length - 30), json, at, length);
    }
    return json;
  }

  private static Raw raw(JsonTokens tokens) {
    return raw(tokens, JsonTokens.ROOT);
  }

  private static Raw raw(JsonTokens tokens, int token) {
    if (tokens.isString(token)) {
      return Raw.of(tokens.text(token));
    } else if (tokens.isNumber(token)) {
      return new Raw.Leaf(Raw.Kind.NUMBER, tokens.text(token));
    } else if (tokens.isTruth(token)) {
      return new Raw.Leaf(Raw.Kind.TRUTH, tokens.text(token));
    } else if (tokens.isObject(token)) {
      Map<String, Raw> members = new LinkedHashMap<>();
      for (int i = token + 1; i < tokens.next(token); i = tokens.next(i)) {
        members.put(tokens.name(i), raw(tokens, i));
      }
      return new Raw.Obj(members);
    } else if (tokens.isList(token)) {
      List<Raw> items = new ArrayList<>();
      for (int i = token + 1; i < tokens.next(token); i = tokens.next(i)) {
        items.add(raw(tokens, i));
      }
      return new Raw.Arr(items);
    }
    return new Raw.Leaf(Raw.Kind.NULL, "null");
  }
}
