package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.FrameCodes;
import org.isopter.mapper.fhir.element.PanelReader;
import org.isopter.mapper.fhir.element.People;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/** Takes an Observation as a fact; knows the description of findings and no finding. */
final class ObservationReader {

  private static final EncodedValue NOTHING =
      new EncodedValue(Optional.empty(), Optional.empty(), Map.of());
  private static final Answers SITES = Answers.of(Site.class);

  private final Catalogue catalogue;
  private final Header header;

  ObservationReader(Catalogue catalogue, Header header) {
    this.catalogue = catalogue;
    this.header = header;
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

  static void common(ElementCursor observation, Header header, String profile) {
    profile(observation, profile);
    observation.expect("status", header.status().word());
    observation
        .only("category")
        .ifPresent(category -> Codings.expectAll(category, List.of(FrameCodes.CATEGORY)));
    People.expectPeople(observation, header);
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
    common(observation, header, finding.id());
    Replaced.expect(observation, header);
    Optional<Site> site = site(observation, finding);
    Optional<OffsetDateTime> at = People.time(observation, "effectiveDateTime");
    Optional<Concept> method =
        finding
            .methods()
            .filter(known -> observation.has("method"))
            .flatMap(known -> Codings.oneOf(observation, "method", known));
    Optional<String> device = observation.object("device").flatMap(d -> d.text("display"));
    List<String> remarks = remarks(observation);
    Optional<Fact<V>> fact =
        observation.has("dataAbsentReason")
            ? PanelReader.absence(observation)
                .flatMap(reason -> site.map(eye -> Fact.absent(finding, eye, reason)))
            : PanelReader.read(observation, finding.layout())
                .flatMap(value -> site.map(eye -> Fact.of(finding, eye, value)));
    if (fact.isEmpty() || at.isEmpty()) {
      return Optional.empty();
    }
    EncodedValue coded = fact.get().panel().orElse(NOTHING);
    code(observation, finding, finding.codes().at(fact.get().site(), coded, method));
    Optional<OffsetDateTime> apart = at.filter(time -> !time.equals(header.performed()));
    return People.fitting(
        observation, () -> fact.get().with(method, apart, device).remarks(remarks));
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
    return holder.object("code").map(code -> code.objects("coding")).orElse(List.of());
  }

  private static void code(ElementCursor observation, Finding<?> finding, List<Code> codes) {
    List<Code> former = finding.codes().former();
    observation
        .object("code")
        .ifPresent(
            code -> {
              Codings.expectAll(code, codes, former);
              boolean older =
                  former.stream().anyMatch(old -> old.display().equals(code.peek("text")));
              code.expect("text", older ? code.peek("text") : finding.title());
            });
  }

  private static Optional<Site> site(ElementCursor observation, Finding<?> finding) {
    Optional<Site> site = Codings.oneOf(observation, "bodySite", SITES).map(Site.class::cast);
    if (site.isPresent() && !finding.sites().contains(site.get())) {
      String wanted = finding.sites().stream().map(Site::word).collect(Collectors.joining(" or "));
      observation.fault("bodySite", site.get().word(), wanted + " for " + finding.id());
      return Optional.empty();
    }
    return site;
  }

  static List<String> remarks(ElementCursor observation) {
    return observation.objects("note").stream()
        .map(note -> note.text("text"))
        .flatMap(Optional::stream)
        .toList();
  }
}
