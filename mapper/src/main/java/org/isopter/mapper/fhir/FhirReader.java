package org.isopter.mapper.fhir;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.mapper.json.JsonTrouble;
import org.isopter.mapper.json.token.JsonTokens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads examinations from the FHIR R4 JSON that Isopter writes, and refuses everything that does
 * not say exactly what the catalogue says.
 *
 * <p>Safe for use by several threads at once.
 */
public final class FhirReader {

  /** The most bytes or characters of a bundle; a full examination has some sixty thousand. */
  static final int LENGTH = 1 << 26;

  private static final StreamReadConstraints LIMITS =
      StreamReadConstraints.builder().maxNestingDepth(100).maxStringLength(20_000_000).build();

  private static final JsonMapper MAPPER =
      JsonMapper.builder(JsonFactory.builder().streamReadConstraints(LIMITS).build())
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          // 1.50 must stay 1.50: the digits say how finely it was measured.
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private static final JsonMapper ASCII =
      MAPPER.rebuild().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

  private final Catalogue catalogue;

  /** Makes a reader of the findings of a catalogue. */
  public FhirReader(Catalogue catalogue) {
    this.catalogue = Objects.requireNonNull(catalogue, "catalogue");
  }

  /** Reads a bundle of one examination in UTF-8; faults have FHIR paths. */
  public Result<Exam> read(byte[] json) {
    return json.length > LENGTH
        ? tooLong(json.length)
        : tokens(json, () -> MAPPER.readTree(json)).flatMap(this::take);
  }

  /** Reads a bundle of one examination; faults have FHIR paths. */
  public Result<Exam> read(String json) {
    if (json.length() > LENGTH) {
      return tooLong(json.length());
    }
    byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
    // Half of a character would be lost on the way to bytes.
    boolean whole = json.equals(new String(bytes, StandardCharsets.UTF_8));
    Supplier<JsonNode> parse = () -> MAPPER.readTree(json);
    return (whole ? tokens(bytes, parse) : parsed(parse, Canonical.isFormer(json)))
        .flatMap(this::take);
  }

  private static Result<Exam> tooLong(int length) {
    return Result.refused(
        Fault.of("", length + " bytes or characters", "a bundle of at most " + LENGTH));
  }

  private static Result<JsonTokens> tokens(byte[] json, Supplier<JsonNode> parse) {
    // Addresses are ASCII, so that each byte of them shows alone.
    boolean former = Canonical.isFormer(new String(json, StandardCharsets.ISO_8859_1));
    Optional<JsonTokens> plain = former ? Optional.empty() : JsonTokens.of(json);
    return plain.map(Result::ok).orElseGet(() -> parsed(parse, former));
  }

  /** Reads what is unusual, or was written under our former addresses, with a parser. */
  private static Result<JsonTokens> parsed(Supplier<JsonNode> parse, boolean former) {
    try {
      JsonNode tree = parse.get();
      if (!tree.isObject()) {
        return Result.refused(Fault.of("", "no JSON object", "a FHIR Bundle in JSON"));
      }
      if (former) {
        FormerAddresses.replace(tree);
      }
      return Result.ok(JsonTokens.ofChecked(ASCII.writeValueAsBytes(tree)));
    } catch (JacksonException broken) {
      return Result.refused(
          JsonTrouble.fault(broken, "no examination of ours needs so much: look at what was sent"));
    }
  }

  /**
   * Takes a bundle of one examination apart; faults have FHIR paths.
   *
   * @param bundle used up here
   */
  @API(status = Status.INTERNAL)
  public Result<Exam> take(JsonTokens bundle) {
    List<Fault> faults = new ArrayList<>();
    Optional<Exam> exam = new BundleReader(catalogue, bundle, faults).read();
    return exam.filter(read -> faults.isEmpty())
        .map(Result::ok)
        .orElseGet(() -> Result.refused(faults));
  }
}
