package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.People;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;

/**
 * The record that an amended one replaces, in each of its observations: whoever finds one of them
 * alone knows of it. The reference names the replaced examination as a whole.
 *
 * <p>FHIR R4, extension "observation-replaces". Bundles of older versions say it in the provenance
 * alone.
 */
final class Replaced {

  private static final String URL = "http://hl7.org/fhir/StructureDefinition/observation-replaces";

  private Replaced() {}

  static void write(Json json, Header header) {
    header
        .amends()
        .map(Ids::of)
        .ifPresent(
            old ->
                json.single(
                    "extension",
                    () -> {
                      json.text("url", URL);
                      json.object("valueReference", () -> reference(json, old));
                    }));
  }

  private static void reference(Json json, Ids old) {
    json.text("type", "Observation");
    json.object("identifier", () -> json.identifier(old.system(), old.record()));
  }

  /** Takes the record that an observation says is replaced. */
  static Optional<Identifier> take(ElementCursor observation) {
    List<ElementCursor> extensions = observation.objects("extension");
    if (extensions.isEmpty()) {
      return Optional.empty();
    }
    if (extensions.size() > 1) {
      observation.fault("extension", extensions.size() + " of them", "at most one");
    }
    ElementCursor extension = extensions.get(0);
    extension.expect("url", URL);
    Optional<ElementCursor> reference = extension.required("valueReference");
    reference.ifPresent(to -> to.expect("type", "Observation"));
    Optional<ElementCursor> record = reference.flatMap(to -> to.required("identifier"));
    // Written with a system always; without one it may be any record's.
    record.ifPresent(identifier -> identifier.require("system"));
    return record.flatMap(People::record);
  }

  /** Takes what an observation says, which is what the record says or nothing. */
  static void expect(ElementCursor observation, Header header) {
    take(observation)
        .filter(seen -> !header.amends().equals(Optional.of(seen)))
        .ifPresent(
            seen ->
                observation.fault(
                    "extension",
                    "replaces " + seen,
                    header.amends().map(old -> "replaces " + old).orElse("none")));
  }
}
