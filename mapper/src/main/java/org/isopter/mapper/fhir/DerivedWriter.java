package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.element.DatumWriter;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.Narrative;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Datum;

/**
 * Writes a derived statement as an Observation of its own, which names the observations it rests
 * on. It is no member of the examination's panel: nobody saw it.
 */
final class DerivedWriter {

  private final Json json;
  private final Header header;
  private final Ids ids;
  private final Map<FactKey, String> facts;

  /**
   * Makes a writer.
   *
   * @param facts the URNs of the observations of the facts
   */
  DerivedWriter(Json json, Header header, Ids ids, Map<FactKey, String> facts) {
    this.json = json;
    this.header = header;
    this.ids = ids;
    this.facts = facts;
  }

  /** Writes the properties of the resource, in the order in which FHIR lists them. */
  void write(Derived derived, String name, Optional<String> id) {
    json.text("resourceType", "Observation");
    json.text("id", id);
    json.narrative(Narrative.of(derived));
    json.single("identifier", () -> json.identifier(ids.system(), ids.derived(name)));
    json.text("status", header.status().word());
    ObservationWriter.category(json);
    json.object(
        "code",
        () -> {
          json.codings(List.of(ExamCodes.DERIVED));
          json.text("text", DerivedText.title(derived));
        });
    Frame.people(json, header, header.performed());
    value(derived);
    ObservationWriter.notes(json, DerivedText.notes(derived));
    json.concept("bodySite", derived.site().code());
    json.object("method", () -> json.text("text", DerivedText.method(derived)));
    json.object("device", this::device);
    json.list("derivedFrom", () -> derived.from().forEach(this::reference));
  }

  private void device() {
    json.text("type", "Device");
    json.object("identifier", () -> json.identifier(DerivedText.RULE_SET, Derivations.RULES));
    json.text("display", FrameWriter.SOFTWARE);
  }

  private void value(Derived derived) {
    Datum value =
        derived
            .value()
            .<Datum>map(number -> new Datum.Measure(number.value(), number.unit()))
            .orElseGet(() -> new Datum.Text(derived.statement().text()));
    value.fold(new DatumWriter(json));
  }

  private void reference(FactKey key) {
    json.element(() -> json.reference(facts.getOrDefault(key, "")));
  }
}
