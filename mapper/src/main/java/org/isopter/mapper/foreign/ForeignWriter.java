package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.document.LeftOver;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Canonical;

/**
 * Writes examinations as FHIR R4 JSON bundles with everything that was carried along: what was left
 * over of a resource stands with the observation that it became, and what was kept whole is an
 * entry of its own, unchanged.
 */
public final class ForeignWriter {

  private final BundleKind kind;
  private final FhirWriter writer;

  private ForeignWriter(BundleKind kind, FhirWriter writer) {
    this.kind = kind;
    this.writer = writer;
  }

  /** Returns a writer of bundles of a kind. */
  public static ForeignWriter of(BundleKind kind) {
    return new ForeignWriter(kind, FhirWriter.of(kind));
  }

  /** Returns this writer, with another that writes the examination; it is one of the same kind. */
  public ForeignWriter with(FhirWriter other) {
    return new ForeignWriter(kind, other);
  }

  /** Returns an examination and what it carries as a bundle on one line. */
  public String write(ReadExam exam) {
    return write(exam.exam(), exam.carried());
  }

  /** Returns an examination and what it carries as a bundle on one line. */
  public String write(Exam exam, Carried carried) {
    Raw bundle = RawJson.OWN.read(writer.write(exam)).orThrow();
    return RawJson.write(bundle((Raw.Obj) bundle, exam.header().id().value(), carried));
  }

  /** Returns JSON that this wrote on lines of its own; numbers keep their digits. */
  public static String indented(String json) {
    return RawJson.indented(RawJson.OWN.read(Objects.requireNonNull(json, "json")).orThrow());
  }

  /** Returns the facts that something is carried for and that an examination does not have. */
  public static List<String> homeless(Exam exam, Carried carried) {
    List<String> facts = exam.keys().stream().map(FactKey::text).toList();
    return carried.leaves().stream()
        .map(Carried.OfFact::fact)
        .filter(fact -> !facts.contains(fact))
        .toList();
  }

  /** Returns what is carried without an examination as a collection on one line. */
  public String write(Carried carried) {
    Map<String, Raw> bundle = new LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("type", Raw.of(BundleKind.COLLECTION.word()));
    return RawJson.write(bundle(new Raw.Obj(bundle), "", carried));
  }

  private Raw.Obj bundle(Raw.Obj bundle, String record, Carried carried) {
    List<Raw> entries = new ArrayList<>();
    for (Raw.Obj entry : bundle.objects("entry")) {
      entries.add(entry(entry, record, carried));
    }
    carried.resources().forEach(whole -> entries.add(entry(whole)));
    Raw.Obj all = entries.isEmpty() ? bundle : bundle.with("entry", Raw.of(entries));
    return carried.frame().isEmpty() ? all : all.with("meta", meta(carried.frame()));
  }

  private static Raw.Obj entry(Raw.Obj entry, String record, Carried carried) {
    Raw.Obj resource = entry.object("resource").orElseThrow();
    if (!Neighbours.type(resource).equals("Observation")) {
      return entry;
    }
    String name =
        resource.objects("identifier").stream()
            .map(id -> id.string("value").orElse(""))
            .findFirst()
            .orElse("");
    List<PlacedLeaf> leaves = new ArrayList<>();
    for (Carried.OfFact of : carried.leaves()) {
      if (name.equals(record + "/" + of.fact())) {
        leaves.addAll(of.leaves());
      }
    }
    return entry.with("resource", LeftOver.into(resource, leaves));
  }

  private Raw.Obj entry(Carried.Whole whole) {
    Map<String, Raw> mark = new LinkedHashMap<>();
    mark.put("url", Raw.of(Canonical.KEPT));
    mark.put("valueCode", Raw.of(whole.why()));
    Map<String, Raw> entry = new LinkedHashMap<>();
    entry.put("extension", Raw.of(List.of(new Raw.Obj(mark))));
    entry.put("fullUrl", Raw.of(whole.fullUrl()));
    entry.put("resource", whole.resource());
    if (kind == BundleKind.TRANSACTION) {
      entry.put("request", request(whole.resource()));
    }
    return new Raw.Obj(entry);
  }

  private static Raw request(Raw.Obj resource) {
    Optional<String> id = resource.string("id");
    String type = Neighbours.type(resource);
    Map<String, Raw> request = new LinkedHashMap<>();
    request.put("method", Raw.of(id.isPresent() ? "PUT" : "POST"));
    request.put("url", Raw.of(id.map(text -> type + "/" + text).orElse(type)));
    return new Raw.Obj(request);
  }

  private static Raw meta(List<PlacedLeaf> frame) {
    return new Raw.Obj(Map.of("extension", Raw.of(List.of(LeftOver.extension(frame)))));
  }
}
