package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.element.DatumWriter;
import org.isopter.mapper.fhir.element.FrameCodes;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.Narrative;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/** Writes a fact as an Observation; knows the description of findings and no finding. */
final class ObservationWriter {

  private static final EncodedValue NOTHING =
      new EncodedValue(Optional.empty(), Optional.empty(), Map.of());

  private final Json json;
  private final DatumWriter values;
  private final Header header;
  private final Ids ids;

  ObservationWriter(Json json, Header header, Ids ids) {
    this.json = json;
    this.values = new DatumWriter(json);
    this.header = header;
    this.ids = ids;
  }

  /** Writes the properties of the resource, in the order in which FHIR lists them. */
  void write(Fact<?> fact, FactKey key, Optional<String> id) {
    Finding<?> finding = fact.finding();
    Optional<EncodedValue> panel = fact.panel();
    json.text("resourceType", "Observation");
    json.text("id", id);
    profile(json, finding.id());
    json.narrative(Narrative.of(fact));
    Replaced.write(json, header);
    json.single("identifier", () -> json.identifier(ids.system(), ids.fact(key)));
    json.text("status", header.status().word());
    category(json);
    json.object(
        "code",
        () -> {
          json.codings(finding.codes().at(fact.site(), panel.orElse(NOTHING), fact.method()));
          json.text("text", finding.title());
        });
    Frame.people(json, header, fact.at().orElse(header.performed()));
    panel.flatMap(EncodedValue::value).ifPresent(value -> value.fold(values));
    fact.outcome().ifAbsent().ifPresent(reason -> DatumWriter.absent(json, reason.code()));
    notes(json, fact.remarks());
    json.concept("bodySite", fact.site().code());
    fact.method().ifPresent(method -> json.concept("method", method.code()));
    fact.device().ifPresent(name -> json.object("device", () -> json.text("display", name)));
    panel.ifPresent(found -> components(finding, found));
  }

  static void profile(Json json, String finding) {
    json.object("meta", () -> json.list("profile", () -> json.text(Canonical.profile(finding))));
  }

  static void category(Json json) {
    json.single("category", () -> json.codings(List.of(FrameCodes.CATEGORY)));
  }

  static void notes(Json json, List<String> remarks) {
    if (!remarks.isEmpty()) {
      json.list("note", () -> remarks.forEach(line -> json.element(() -> json.text("text", line))));
    }
  }

  private void components(Finding<?> finding, EncodedValue panel) {
    if (panel.notation().isEmpty() && panel.parts().isEmpty()) {
      return;
    }
    Variant variant = finding.layout().variant(panel.notation()).orElseThrow();
    json.list(
        "component",
        () -> {
          panel.notation().ifPresent(n -> notation(finding.layout().choice().orElseThrow(), n));
          for (Part<?, ?> part : variant.parts()) {
            Outcome<Datum> outcome = panel.parts().get(part.key());
            if (outcome != null) {
              json.element(() -> component(part, outcome));
            }
          }
        });
  }

  private void notation(Choice<?, ?> choice, Concept notation) {
    json.element(
        () -> {
          json.concept("code", choice.code());
          json.concept("valueCodeableConcept", notation.code());
        });
  }

  private void component(Part<?, ?> part, Outcome<Datum> outcome) {
    json.concept("code", part.code());
    outcome.ifFound().ifPresent(datum -> datum.fold(values));
    outcome.ifAbsent().ifPresent(reason -> DatumWriter.absent(json, reason.code()));
  }
}
