package org.isopter.mapper.fhir;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.isopter.mapper.fhir.element.JsonTrouble;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

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

  private final Catalogue catalogue;

  /** Makes a reader of the findings of a catalogue. */
  public FhirReader(Catalogue catalogue) {
    this.catalogue = Objects.requireNonNull(catalogue, "catalogue");
  }

  /** Reads a bundle of one examination in UTF-8; faults have FHIR paths. */
  public Result<Exam> read(byte[] json) {
    return json.length > LENGTH ? tooLong(json.length) : read(() -> parse(json));
  }

  /** Reads a bundle of one examination; faults have FHIR paths. */
  public Result<Exam> read(String json) {
    return json.length() > LENGTH ? tooLong(json.length()) : read(() -> parse(json));
  }

  private static Result<Exam> tooLong(int length) {
    return Result.refused(
        Fault.of("", length + " bytes or characters", "a bundle of at most " + LENGTH));
  }

  private static JsonNode parse(byte[] json) {
    // Addresses are ASCII, so that each byte of them shows alone.
    String bytes = new String(json, StandardCharsets.ISO_8859_1);
    return current(MAPPER.readTree(json), Canonical.isFormer(bytes));
  }

  private static JsonNode parse(String json) {
    return current(MAPPER.readTree(json), Canonical.isFormer(json));
  }

  private static JsonNode current(JsonNode tree, boolean former) {
    if (former) {
      FormerAddresses.replace(tree);
    }
    return tree;
  }

  private Result<Exam> read(Supplier<JsonNode> parse) {
    return tree(parse).flatMap(this::take);
  }

  /**
   * Takes a bundle of one examination apart; faults have FHIR paths.
   *
   * @param bundle a tree whose numbers have the digits they were written with; used up here
   */
  public Result<Exam> take(ObjectNode bundle) {
    List<Fault> faults = new ArrayList<>();
    Optional<Exam> exam = new BundleReader(catalogue, bundle, faults).read();
    return exam.filter(read -> faults.isEmpty())
        .map(Result::ok)
        .orElseGet(() -> Result.refused(faults));
  }

  private static Result<ObjectNode> tree(Supplier<JsonNode> parse) {
    try {
      JsonNode tree = parse.get();
      return tree instanceof ObjectNode object
          ? Result.ok(object)
          : Result.refused(Fault.of("", "no JSON object", "a FHIR Bundle in JSON"));
    } catch (JacksonException broken) {
      return Result.refused(
          JsonTrouble.fault(broken, "no examination of ours needs so much: look at what was sent"));
    }
  }
}
