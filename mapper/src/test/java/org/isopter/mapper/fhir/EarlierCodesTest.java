package org.isopter.mapper.fhir;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Code;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A record that an older version wrote reads as it did; the list of codes that were written once is
 * from the history of the code systems.
 */
class EarlierCodesTest {

  /** Keeps the digits of a number. */
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private static final FhirReader READER = new FhirReader(Catalogue.standard());
  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION);
  private static final String OURS =
      Code.local("any", "any", "").system().replace("CodeSystem/any", "");
  private static final long SEED = Long.getLong("seed", 2_611L);
  private static final int EXAMS = 2_000;
  private static final ExamSampler SAMPLER =
      new ExamSampler(Catalogue.standard().all(), new Random(SEED));
  private static final List<Written> WRITTEN = new ArrayList<>();

  /** A code that was written once, and the one that is written now. */
  record Earlier(String system, String code, String display, String nowSystem, String nowCode) {

    private static Earlier of(String line) {
      String[] cells = line.split("\t", -1);
      int bar = cells[3].indexOf('|');
      return new Earlier(
          whole(cells[0]),
          cells[1],
          cells[2],
          whole(cells[3].substring(0, bar)),
          cells[3].substring(bar + 1));
    }

    private static String whole(String system) {
      return system.startsWith("CodeSystem/") ? OURS + system : system;
    }

    boolean isOfFinding() {
      return system.equals(OURS + "CodeSystem/finding");
    }

    @Override
    public String toString() {
      return system + "|" + code + " " + display;
    }
  }

  /** An examination, and the bundle that is written of it. */
  private record Written(Exam exam, String json) {

    /** Says whether it may hold the code that is written now. */
    boolean has(Earlier earlier) {
      return json.contains('"' + earlier.nowCode() + '"');
    }
  }

  /** Returns one of a row of examinations, which is drawn and written as far as it is asked for. */
  private static Written written(int number) {
    while (WRITTEN.size() <= number) {
      Exam exam = SAMPLER.next();
      WRITTEN.add(new Written(exam, WRITER.write(exam)));
    }
    return WRITTEN.get(number);
  }

  static Stream<Earlier> codes() {
    try (InputStream in =
        Objects.requireNonNull(EarlierCodesTest.class.getResourceAsStream("/codes/earlier.tsv"))) {
      String text = new String(in.readAllBytes(), UTF_8);
      return Arrays.stream(text.split("\n", -1))
          .skip(1)
          .filter(line -> !line.isBlank())
          .map(Earlier::of)
          .toList()
          .stream();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  @ParameterizedTest
  @MethodSource("codes")
  void readsWhatAnOlderVersionWrote(Earlier earlier) {
    int changed = 0;
    for (int i = 0; i < EXAMS && changed < 3; i++) {
      Written one = written(i);
      if (one.has(earlier)) {
        JsonNode bundle = MAPPER.readTree(one.json());
        if (replace(bundle, earlier) > 0) {
          changed++;
          Exam read = READER.read(MAPPER.writeValueAsBytes(bundle)).orThrow();
          assertEquals(one.exam(), read, "seed " + SEED + ", examination " + i);
        }
      }
    }
    assertTrue(changed > 0, "no examination has the code that is written now");
  }

  @Test
  void readsNoCodeThatWasNeverWritten() {
    Earlier never =
        new Earlier(
            OURS + "CodeSystem/pupil-response",
            "abolished",
            "Abolished",
            "http://snomed.info/sct",
            "131194007");
    int changed = 0;
    for (int i = 0; i < EXAMS && changed < 3; i++) {
      JsonNode bundle = MAPPER.readTree(written(i).json());
      if (replace(bundle, never) > 0) {
        changed++;
        assertFalse(READER.read(MAPPER.writeValueAsBytes(bundle)).isOk());
      }
    }
    assertTrue(changed > 0);
  }

  /** Puts the earlier code in place of the one of now; of a finding in place of all its codes. */
  private static int replace(JsonNode node, Earlier earlier) {
    int count = 0;
    for (JsonNode child : node) {
      count += replace(child, earlier);
    }
    if (node instanceof ObjectNode concept && concept.get("coding") instanceof ArrayNode codings) {
      for (JsonNode coding : codings) {
        if (coding.path("system").asString("").equals(earlier.nowSystem())
            && coding.path("code").asString("").equals(earlier.nowCode())) {
          count++;
          put((ObjectNode) coding, earlier);
          if (earlier.isOfFinding()) {
            concept.putArray("coding").add(coding);
            concept.put("text", earlier.display());
          }
          break;
        }
      }
    }
    return count;
  }

  private static void put(ObjectNode coding, Earlier earlier) {
    coding.put("system", earlier.system());
    coding.put("code", earlier.code());
    coding.put("display", earlier.display());
  }
}
