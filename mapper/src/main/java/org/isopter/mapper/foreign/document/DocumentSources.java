package org.isopter.mapper.foreign.document;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.isopter.mapper.cda.CdaReader;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.hapi.HapiParts;
import org.isopter.mapper.hapi.Releases;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Documents in any form that can be read, as R4 JSON: JSON or XML, R4, R4B or R5; and clinical
 * documents (CDA) and messages (HL7 v2) as observations of FHIR.
 *
 * <p>R4 JSON is taken as it is. Everything else goes through HAPI, whose converters drop what R4
 * does not know: what is no longer there after a conversion is said, so that it can be carried.
 */
public final class DocumentSources {

  private final RawJson json;
  private final Limits limits;
  private final Optional<ZoneId> zone;

  /**
   * Makes a reader of documents within limits.
   *
   * @param zone the time zone of a time of a message that has no offset; empty where it is not
   *     known
   */
  public DocumentSources(Limits limits, Optional<ZoneId> zone) {
    this.json = new RawJson(limits);
    this.limits = limits;
    this.zone = zone;
  }

  /**
   * A document as R4 JSON.
   *
   * @param json the document
   * @param lost the leaves that a conversion left out, where they stood in the original
   */
  public record Source(Raw json, List<PlacedLeaf> lost) {}

  /** Reads a document of a release; XML is known by its first character. */
  public Result<Source> read(byte[] bytes, Release release) {
    if (bytes.length > limits.documentLength()) {
      return Result.refused(
          new Fault(
              "",
              bytes.length + " bytes",
              "a document of at most " + limits.documentLength() + " bytes",
              "split the document, or raise the limit"));
    }
    boolean xml = isXml(bytes);
    if (xml && CdaReader.isCda(bytes)) {
      return CdaReader.read(bytes).map(raw -> new Source(raw, List.of()));
    }
    if (V2Reader.isV2(bytes)) {
      return V2Reader.read(bytes, zone).map(raw -> new Source(raw, List.of()));
    }
    if (!xml && release == Release.R4) {
      return json.read(bytes).map(raw -> new Source(raw, List.of()));
    }
    String text = new String(bytes, UTF_8);
    if (release == Release.R4) {
      return with(() -> FhirXml.toJson(text), HapiParts.XML)
          .flatMap(json::read)
          .map(raw -> new Source(raw, List.of()));
    }
    HapiParts own = release == Release.R5 ? HapiParts.R5 : HapiParts.R4B;
    return with(
            () -> xml ? Releases.toJson(text, release == Release.R5) : text,
            HapiParts.XML,
            HapiParts.CONVERTER,
            HapiParts.R5,
            own)
        .flatMap(same -> converted(same, release));
  }

  /** Asks for the libraries first, for nothing of them may be touched where one is missing. */
  private static Result<String> with(Supplier<String> reading, HapiParts... needed) {
    return Result.of(
        () -> {
          for (HapiParts part : needed) {
            part.require();
          }
          return reading.get();
        });
  }

  private Result<Source> converted(String text, Release release) {
    return json.read(text)
        .flatMap(
            original ->
                Result.of(() -> toR4(text, release))
                    .flatMap(json::read)
                    .map(raw -> Structures.restored(original, raw))
                    .map(raw -> new Source(raw, lost(original, raw, release))));
  }

  private static List<PlacedLeaf> lost(Raw original, Raw converted, Release release) {
    Set<PlacedLeaf> there = new HashSet<>(converted.leaves());
    List<PlacedLeaf> lost = new ArrayList<>();
    for (PlacedLeaf leaf : original.leaves()) {
      if (!there.contains(leaf)) {
        lost.add(new PlacedLeaf("/" + release.name() + leaf.at(), leaf.value()));
      }
    }
    return lost;
  }

  private static String toR4(String text, Release release) {
    return release == Release.R5 ? Releases.fromR5(text) : Releases.fromR4b(text);
  }

  private static boolean isXml(byte[] bytes) {
    for (byte b : bytes) {
      boolean mark = b == (byte) 0xEF || b == (byte) 0xBB || b == (byte) 0xBF;
      if (!mark && !Character.isWhitespace(b)) {
        return b == '<';
      }
    }
    return false;
  }
}
