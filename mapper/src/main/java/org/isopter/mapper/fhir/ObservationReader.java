package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.ObservationMember;

/** Takes an Observation as a fact; knows the description of findings and no finding. */
final class ObservationReader {

  private final Catalogue catalogue;
  private final Header header;
  private final String performed;
  private final SameEverywhere repeated;

  ObservationReader(Catalogue catalogue, Header header) {
    this.catalogue = catalogue;
    this.header = header;
    this.repeated = new SameEverywhere(header);
    this.performed = Frame.time(header.performed());
  }

  /** Takes the fact; empty when a fault was reported. */
  Optional<Fact<?>> read(ElementCursor observation) {
    Transport.resource(observation);
    Optional<Finding<?>> finding = finding(observation);
    if (finding.isEmpty()) {
      observation.fault("code", "no code of a known finding", "a code of the catalogue");
    }
    return finding.flatMap(known -> fact(observation, known));
  }

  /** Takes the category, which is that of every observation of ours. */
  static void category(ElementCursor observation) {
    observation
        .only(ObservationMember.CATEGORY.label())
        .ifPresent(category -> Codings.expectAll(category, List.of(BaseElements.EXAM)));
  }

  /** Takes the profiles that are claimed; where any is, ours must be among them. */
  static void profile(ElementCursor resource, String id) {
    String wanted = Canonical.profile(id);
    resource
        .object("meta")
        .filter(meta -> meta.has("profile"))
        .ifPresent(
            meta -> {
              List<String> seen = meta.texts("profile");
              if (!seen.contains(wanted)) {
                meta.fault("profile", seen.toString(), wanted);
              }
            });
  }

  private <V> Optional<Fact<?>> fact(ElementCursor observation, Finding<V> finding) {
    profile(observation, finding.id());
    Replaced.expect(observation, header);
    return new FactDraft<>(observation, finding, header, performed, repeated).fact();
  }

  private Optional<Finding<?>> finding(ElementCursor observation) {
    for (ElementCursor coding : codings(observation)) {
      Optional<Finding<?>> finding = catalogue.byCode(coding.peek("system"), coding.peek("code"));
      if (finding.isPresent()) {
        return finding;
      }
    }
    return Optional.empty();
  }

  private static List<ElementCursor> codings(ElementCursor holder) {
    return holder
        .object(ObservationMember.CODE.label())
        .map(code -> code.objects("coding"))
        .orElse(List.of());
  }

  static List<String> remarks(ElementCursor observation) {
    List<ElementCursor> notes = observation.objects(ObservationMember.NOTE.label());
    return notes.isEmpty()
        ? List.of()
        : notes.stream().map(note -> note.text("text")).flatMap(Optional::stream).toList();
  }
}
