package org.isopter.mapper.fhir;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Code;

/** Writes one examination as a bundle. */
final class BundleWriter {

  private final Json json;
  private final Exam exam;
  private final BundleKind kind;
  private final Optional<String> hash;
  private final boolean withDerived;
  private final List<Derived> derived;
  private final List<String> derivedNames;
  private final Ids ids;
  private final List<FactKey> keys;
  private final List<String> factIds = new ArrayList<>();
  private final String panelId;
  private final String reportId;
  private Optional<Code> label = Optional.empty();
  private Optional<Exam> former = Optional.empty();
  private GivenOut report = GivenOut.NOTHING;

  BundleWriter(Json json, Exam exam, BundleKind kind, Optional<String> hash, boolean derived) {
    this.json = json;
    this.exam = exam;
    this.kind = kind;
    this.hash = hash;
    this.withDerived = derived;
    this.derived = derived ? Derivations.of(exam) : List.of();
    this.derivedNames = Derived.names(this.derived);
    this.ids = Ids.of(exam.header().id());
    this.keys = exam.keys();
    keys.forEach(key -> factIds.add(ids.uuid("Observation", ids.fact(key))));
    this.panelId = ids.uuid("Observation", ids.record());
    this.reportId = ids.uuid("DiagnosticReport", ids.record());
  }

  /** Returns this writer with a security label for the bundle. */
  BundleWriter labelled(Optional<Code> security) {
    label = security;
    return this;
  }

  /** Returns this writer, taking back what a former record holds and this one does not. */
  BundleWriter takingBack(Optional<Exam> record) {
    former = record;
    return this;
  }

  /** Returns this writer with what the report says of itself. */
  BundleWriter reporting(GivenOut said) {
    report = said;
    return this;
  }

  void write() {
    json.element(
        () -> {
          json.text("resourceType", "Bundle");
          label.ifPresent(code -> json.object("meta", () -> security(code)));
          if (kind != BundleKind.TRANSACTION) {
            json.object("identifier", () -> json.identifier(ids.system(), ids.record()));
          }
          json.text("type", kind.word());
          json.text("timestamp", Frame.time(exam.header().performed()));
          json.list("entry", this::entries);
        });
  }

  private void security(Code code) {
    json.list("security", () -> json.coding(code));
  }

  private void entries() {
    FrameWriter frame = new FrameWriter(json, exam, ids);
    if (kind == BundleKind.DOCUMENT) {
      String uuid = ids.uuid("Composition", ids.record());
      List<String> sections = List.of(Ids.urn(reportId), Ids.urn(panelId));
      entry(
          "Composition",
          uuid,
          ids.record(),
          id -> frame.composition(id, sections, derivedUrns(), derived));
    }
    wholes(frame);
    facts(key -> true);
    derived(name -> true);
    provenance(frame);
    former.ifPresent(this::takeBack);
  }

  private void takeBack(Exam record) {
    Exam wrong = new Exam(record.header().enteredInError(), record.facts());
    BundleWriter gone = new BundleWriter(json, wrong, kind, Optional.empty(), withDerived);
    if (record.header().id().equals(exam.header().id())) {
      gone.facts(key -> !keys.contains(key));
      gone.derived(name -> !derivedNames.contains(name));
      return;
    }
    FrameWriter frame = new FrameWriter(json, wrong, gone.ids);
    gone.wholes(frame);
    gone.facts(key -> true);
    gone.derived(name -> true);
  }

  private void wholes(FrameWriter frame) {
    entry(
        "DiagnosticReport",
        reportId,
        ids.record(),
        id -> frame.report(id, Ids.urn(panelId), report));
    List<String> members = factIds.stream().map(Ids::urn).toList();
    entry("Observation", panelId, ids.record(), id -> frame.panel(id, members));
  }

  private void facts(Predicate<FactKey> which) {
    ObservationWriter writer = new ObservationWriter(json, exam.header(), ids);
    for (int i = 0; i < keys.size(); i++) {
      int at = i;
      if (which.test(keys.get(at))) {
        entry(
            "Observation",
            factIds.get(at),
            ids.fact(keys.get(at)),
            id -> writer.write(exam.facts().get(at), keys.get(at), id));
      }
    }
  }

  private void derived(Predicate<String> which) {
    Map<FactKey, String> urns = new HashMap<>();
    for (int i = 0; i < keys.size(); i++) {
      urns.put(keys.get(i), Ids.urn(factIds.get(i)));
    }
    DerivedWriter writer = new DerivedWriter(json, exam.header(), ids, urns);
    for (int i = 0; i < derived.size(); i++) {
      Derived one = derived.get(i);
      String name = derivedNames.get(i);
      if (which.test(name)) {
        entry("Observation", derivedId(name), ids.derived(name), id -> writer.write(one, name, id));
      }
    }
  }

  private List<String> derivedUrns() {
    return derivedNames.stream().map(name -> Ids.urn(derivedId(name))).toList();
  }

  private String derivedId(String name) {
    return ids.uuid("Observation", ids.derived(name));
  }

  private void provenance(FrameWriter frame) {
    String uuid = ids.uuid("Provenance", ids.record());
    List<String> targets = new ArrayList<>(List.of(Ids.urn(reportId), Ids.urn(panelId)));
    factIds.forEach(id -> targets.add(Ids.urn(id)));
    targets.addAll(derivedUrns());
    json.element(
        () -> {
          json.text("fullUrl", Ids.urn(uuid));
          json.object("resource", () -> frame.provenance(uuid, targets, hash));
          // A provenance has no identifier in R4, so it is put under an id of its own.
          request(() -> "Provenance/" + uuid);
        });
  }

  private void entry(
      String type, String uuid, String identifier, Consumer<Optional<String>> resource) {
    boolean send = kind == BundleKind.TRANSACTION;
    json.element(
        () -> {
          json.text("fullUrl", Ids.urn(uuid));
          json.object(
              "resource", () -> resource.accept(send ? Optional.empty() : Optional.of(uuid)));
          request(() -> Json.search(type, ids.system(), identifier));
        });
  }

  private void request(Supplier<String> url) {
    if (kind == BundleKind.TRANSACTION) {
      json.object(
          "request",
          () -> {
            json.text("method", "PUT");
            json.text("url", url.get());
          });
    }
  }
}
