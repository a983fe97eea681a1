package org.isopter.mapper.fhir;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
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

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          // 1.50 must stay 1.50: the digits say how finely it was measured.
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private final Catalogue catalogue;

  /** Makes a reader of the findings of a catalogue. */
  public FhirReader(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** Reads a bundle of one examination in UTF-8; faults have FHIR paths. */
  public Result<Exam> read(byte[] json) {
    return tree(() -> MAPPER.readTree(json)).flatMap(this::read);
  }

  /** Reads a bundle of one examination; faults have FHIR paths. */
  public Result<Exam> read(String json) {
    return tree(() -> MAPPER.readTree(json)).flatMap(this::read);
  }

  private Result<Exam> read(ObjectNode bundle) {
    List<Fault> faults = new ArrayList<>();
    Optional<Exam> exam = new BundleReader(catalogue, bundle, faults).read();
    return exam.filter(read -> faults.isEmpty())
        .map(Result::ok)
        .orElseGet(() -> Result.refused(faults));
  }

  private static Result<ObjectNode> tree(java.util.function.Supplier<JsonNode> parse) {
    try {
      JsonNode tree = parse.get();
      return tree instanceof ObjectNode object
          ? Result.ok(object)
          : Result.refused(Fault.of("", "no JSON object", "a FHIR Bundle in JSON"));
    } catch (JacksonException broken) {
      TokenStreamLocation at = broken.getLocation();
      String where = at == null ? "" : "line " + at.getLineNr() + ", column " + at.getColumnNr();
      return Result.refused(
          new Fault(
              where,
              words(broken.getOriginalMessage()),
              "well-formed JSON",
              "correct the file where it says, or send it again"));
    }
  }

  /** Leaves out what a parser says about itself. */
  private static String words(String message) {
    int detail = message.indexOf(" (start marker");
    return detail < 0 ? message : message.substring(0, detail);
  }
}
