package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.People;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;
import org.isopter.model.exam.Status;
import org.isopter.model.wire.ObservationMember;

/** A header that is taken from the panel member by member. */
final class PanelDraft {

  private final ElementCursor panel;
  private Optional<Identifier> id = Optional.empty();
  private Optional<Status> status = Optional.empty();
  private Optional<Party> subject = Optional.empty();
  private Optional<Party> performer = Optional.empty();
  private Optional<OffsetDateTime> performed = Optional.empty();
  private Optional<Setting> setting = Optional.empty();
  private Demographics demographics = Demographics.UNKNOWN;
  private Optional<String> remark = Optional.empty();

  PanelDraft(ElementCursor panel) {
    this.panel = panel;
  }

  /**
   * Takes the header; empty when a fault was reported.
   *
   * @param provenance the record that the provenance says is replaced
   */
  Optional<Header> header(Optional<Identifier> provenance) {
    Transport.resource(panel);
    ObservationReader.profile(panel, ExamCodes.PANEL.code());
    Optional<Identifier> amends = amends(provenance);
    ObservationMember.all().forEach(member -> taking(member).run());
    if (id.isEmpty() || status.isEmpty() || subject.isEmpty() || performed.isEmpty()) {
      return Optional.empty();
    }
    return People.fitting(
        panel,
        () ->
            new Header(
                id.get(),
                subject.get(),
                demographics,
                performer,
                performed.get(),
                status.get(),
                setting,
                amends,
                remark));
  }

  /** Returns what takes a member; whatever nothing takes is reported as left over. */
  private Runnable taking(ObservationMember member) {
    String name = member.label();
    return switch (member) {
      case IDENTIFIER -> () -> id = panel.only(name).flatMap(People::record);
      case STATUS -> () -> status = status(name);
      case CATEGORY -> () -> ObservationReader.category(panel);
      case CODE -> () -> panel.required(name).ifPresent(PanelDraft::code);
      case SUBJECT ->
          () -> subject = panel.required(name).flatMap(one -> People.party(one, "Patient"));
      case EFFECTIVE -> () -> performed = People.time(panel, Frame.EFFECTIVE);
      case PERFORMER -> () -> performer = performer(name);
      case NOTE -> () -> remark = remark(name);
      // Followed when the header is there: what stands in the members is compared with it.
      case HAS_MEMBER -> () -> {};
      case COMPONENT -> this::components;
      case MODIFIER_EXTENSION, FOCUS, VALUE, ABSENT_REASON, BODY_SITE, METHOD, SPECIMEN, DEVICE ->
          () -> {};
    };
  }

  private static void code(ElementCursor code) {
    Codings.expectAll(code, List.of(ExamCodes.PANEL));
    code.expect("text", ExamCodes.PANEL.display());
  }

  private Optional<Party> performer(String name) {
    return panel.objects(name).stream()
        .findFirst()
        .flatMap(one -> People.party(one, "Practitioner"));
  }

  private void components() {
    HeaderComponents components = new HeaderComponents(panel);
    setting = components.setting();
    demographics = components.demographics();
  }

  private Optional<Identifier> amends(Optional<Identifier> provenance) {
    Optional<Identifier> stated = Replaced.take(panel);
    if (stated.isPresent() && provenance.isPresent() && !stated.equals(provenance)) {
      String wanted = "as in the provenance, " + provenance.get();
      panel.fault("extension", "replaces " + stated.get(), wanted);
    }
    return stated.or(() -> provenance);
  }

  private Optional<Status> status(String name) {
    String word = panel.text(name).orElse("nothing");
    Optional<Status> status = Status.of(word);
    if (status.isEmpty()) {
      List<String> words = Stream.of(Status.values()).map(Status::word).toList();
      panel.fault(name, word, "one of " + words);
    }
    return status;
  }

  private Optional<String> remark(String name) {
    List<String> remarks = ObservationReader.remarks(panel);
    if (remarks.size() > 1) {
      // A record has one remark on the whole; a second must not be lost.
      panel.fault(name, remarks.size() + " notes", "at most one");
    }
    return remarks.stream().findFirst();
  }
}
