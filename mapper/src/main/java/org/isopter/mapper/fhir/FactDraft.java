package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.PanelReader;
import org.isopter.mapper.fhir.element.People;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;
import org.isopter.model.wire.ObservationMember;

/** A fact that is taken from its Observation member by member. */
final class FactDraft<V> {

  private static final EncodedValue NOTHING =
      new EncodedValue(Optional.empty(), Optional.empty(), Map.of());
  private static final Answers SITES = Answers.of(Site.class);

  private final ElementCursor observation;
  private final Finding<V> finding;
  private final Header header;
  private final String performed;
  private final SameEverywhere repeated;
  private Optional<OffsetDateTime> at = Optional.empty();
  private Optional<Decoded<V>> value = Optional.empty();
  private Optional<Absence> absence = Optional.empty();
  private Optional<Site> site = Optional.empty();
  private Optional<Concept> method = Optional.empty();
  private Optional<String> device = Optional.empty();
  private List<String> remarks = List.of();

  /**
   * Makes it.
   *
   * @param performed the time of the examination as it is written
   * @param repeated what all observations of the examination say again
   */
  FactDraft(
      ElementCursor observation,
      Finding<V> finding,
      Header header,
      String performed,
      SameEverywhere repeated) {
    this.observation = observation;
    this.finding = finding;
    this.header = header;
    this.performed = performed;
    this.repeated = repeated;
  }

  /** Takes the fact; empty when a fault was reported. */
  Optional<Fact<?>> fact() {
    ObservationMember.all().forEach(this::take);
    Optional<Fact<V>> fact =
        site.flatMap(
            eye ->
                absence
                    .map(reason -> Fact.absent(finding, eye, reason))
                    .or(() -> value.map(found -> Fact.of(finding, eye, found))));
    if (fact.isEmpty() || at.isEmpty()) {
      return Optional.empty();
    }
    EncodedValue coded = fact.get().panel().orElse(NOTHING);
    code(finding.codes().at(fact.get().site(), coded, method));
    Optional<OffsetDateTime> apart = at.filter(time -> !time.equals(header.performed()));
    return People.fitting(
        observation, () -> fact.get().with(method, apart, device).remarks(remarks));
  }

  /** Takes a member; whatever nothing takes is reported as left over. */
  private void take(ObservationMember member) {
    String name = member.label();
    switch (member) {
      case STATUS -> observation.expect(name, header.status().word());
      case CATEGORY -> repeated.category(observation);
      case SUBJECT -> repeated.subject(observation);
      case EFFECTIVE -> at = time();
      case PERFORMER -> repeated.performer(observation);
      case VALUE -> value();
      case ABSENT_REASON -> absence = absence(name);
      case NOTE -> remarks = ObservationReader.remarks(observation);
      case BODY_SITE -> site = site(name);
      case METHOD -> method = method(name);
      case DEVICE -> device = observation.object(name).flatMap(d -> d.text("display"));
      // An identifier is compared when all facts are there, for its name depends on its neighbours;
      // the codes when value, eye and method are; and the layout of a value takes its components.
      case IDENTIFIER, CODE, COMPONENT -> {}
      case MODIFIER_EXTENSION, FOCUS, SPECIMEN, HAS_MEMBER -> {}
    }
  }

  /** Most facts are of the time of the examination, which is parsed already. */
  private Optional<OffsetDateTime> time() {
    if (observation.peek(Frame.EFFECTIVE).equals(performed)) {
      observation.drop(Frame.EFFECTIVE);
      return Optional.of(header.performed());
    }
    return People.time(observation, Frame.EFFECTIVE);
  }

  private void value() {
    if (!isAbsent()) {
      value = PanelReader.read(observation, finding.layout());
    }
  }

  private boolean isAbsent() {
    return observation.has(ObservationMember.ABSENT_REASON.label());
  }

  private Optional<Absence> absence(String name) {
    return observation.has(name) ? PanelReader.absence(observation) : Optional.empty();
  }

  private Optional<Concept> method(String name) {
    return finding
        .methods()
        .filter(known -> observation.has(name))
        .flatMap(known -> Codings.oneOf(observation, name, known));
  }

  private void code(List<Code> codes) {
    List<Code> former = finding.codes().former();
    observation
        .object(ObservationMember.CODE.label())
        .ifPresent(
            code -> {
              Codings.expectAll(code, codes, former);
              boolean older =
                  former.stream().anyMatch(old -> old.display().equals(code.peek("text")));
              code.expect("text", older ? code.peek("text") : finding.title());
            });
  }

  private Optional<Site> site(String name) {
    Optional<Site> site = Codings.oneOf(observation, name, SITES).map(Site.class::cast);
    if (site.isPresent() && !finding.sites().contains(site.get())) {
      String wanted = finding.sites().stream().map(Site::word).collect(Collectors.joining(" or "));
      observation.fault(name, site.get().word(), wanted + " for " + finding.id());
      return Optional.empty();
    }
    return site;
  }
}
