package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.value.Canonical;

/**
 * Writes examinations as FHIR R4 JSON bundles with everything that was carried along: what was left
 * over of a resource stands with the observation that it became, and what was kept whole is an
 * entry of its own, unchanged.
 */
public final class ForeignWriter {

  /** The extension of an entry that was kept; its value is the word of the reason. */
  static final String KEPT = Canonical.profile("kept");

  private final BundleKind kind;

  private ForeignWriter(BundleKind kind) {
    this.kind = kind;
  }

  /** Returns a writer of bundles of a kind. */
  public static ForeignWriter of(BundleKind kind) {
    return new ForeignWriter(kind);
  }

  /** Returns an examination and what it carries as a bundle on one line. */
  public String write(ReadExam exam) {
    Raw bundle = new RawJson(Limits.USUAL).read(FhirWriter.of(kind).write(exam.exam())).orThrow();
    String record = exam.exam().header().id().value();
    return RawJson.write(bundle((Raw.Obj) bundle, record, exam.carried()));
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
    List<Placed> leaves = new ArrayList<>();
    for (Carried.OfFact of : carried.leaves()) {
      if (name.equals(record + "/" + of.fact())) {
        leaves.addAll(of.leaves());
      }
    }
    return entry.with("resource", LeftOver.into(resource, leaves));
  }

  private Raw.Obj entry(Carried.Whole whole) {
    Map<String, Raw> mark = new LinkedHashMap<>();
    mark.put("url", Raw.of(KEPT));
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

  private static Raw meta(List<Placed> frame) {
    return new Raw.Obj(Map.of("extension", Raw.of(List.of(LeftOver.extension(frame)))));
  }
}
