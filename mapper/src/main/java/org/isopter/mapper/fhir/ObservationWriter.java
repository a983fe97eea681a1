package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.element.DatumWriter;
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
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.ObservationMember;
import org.isopter.model.wire.ValueType;

/** Writes a fact as an Observation; knows the description of findings and no finding. */
final class ObservationWriter {

  private static final EncodedValue NOTHING =
      new EncodedValue(Optional.empty(), Optional.empty(), Map.of());

  private final Json json;
  private final DatumWriter values;
  private final Header header;
  private final Ids ids;

  /** The time of the examination, which most facts have. */
  private final String performed;

  ObservationWriter(Json json, Header header, Ids ids) {
    this.json = json;
    this.values = new DatumWriter(json);
    this.header = header;
    this.ids = ids;
    this.performed = Frame.time(header.performed());
  }

  /** Writes the properties of the resource, in the order in which FHIR lists them. */
  void write(Fact<?> fact, FactKey key, Optional<String> id) {
    json.text("resourceType", "Observation");
    json.text("id", id);
    profile(json, fact.finding().id());
    json.narrative(Narrative.of(fact));
    Replaced.write(json, header);
    EncodedValue panel = fact.panel().orElse(NOTHING);
    for (ObservationMember member : ObservationMember.all()) {
      content(member, fact, panel, key).run();
    }
  }

  /** Returns what writes a member, where the fact has something to say there. */
  private Runnable content(
      ObservationMember member, Fact<?> fact, EncodedValue panel, FactKey key) {
    Finding<?> finding = fact.finding();
    String name = member.label();
    return switch (member) {
      case MODIFIER_EXTENSION, FOCUS, SPECIMEN, HAS_MEMBER -> () -> {};
      case IDENTIFIER ->
          () -> json.single(name, () -> json.identifier(ids.system(), ids.fact(key)));
      case STATUS -> () -> json.text(name, header.status().word());
      case CATEGORY -> () -> category(json);
      case CODE ->
          () -> code(name, finding.codes().at(fact.site(), panel, fact.method()), finding.title());
      case SUBJECT -> () -> Frame.subject(json, header);
      case EFFECTIVE -> () -> effective(fact);
      case PERFORMER -> () -> Frame.performer(json, header);
      case VALUE -> () -> panel.value().ifPresent(value -> value.fold(values));
      case ABSENT_REASON ->
          () -> fact.outcome().ifAbsent().ifPresent(why -> DatumWriter.absent(json, why.code()));
      case NOTE -> () -> notes(json, fact.remarks());
      case BODY_SITE -> () -> json.concept(name, fact.site().code());
      case METHOD -> () -> fact.method().ifPresent(method -> json.concept(name, method.code()));
      case DEVICE ->
          () -> fact.device().ifPresent(of -> json.object(name, () -> json.text("display", of)));
      case COMPONENT -> () -> components(finding, panel);
    };
  }

  private void effective(Fact<?> fact) {
    boolean own = fact.at().filter(at -> !at.equals(header.performed())).isPresent();
    json.text(Frame.EFFECTIVE, own ? Frame.time(fact.at().orElseThrow()) : performed);
  }

  private void code(String name, List<Code> codes, String title) {
    json.object(
        name,
        () -> {
          json.codings(codes);
          json.text("text", title);
        });
  }

  static void profile(Json json, String finding) {
    json.object("meta", () -> json.list("profile", () -> json.text(Canonical.profile(finding))));
  }

  static void category(Json json) {
    json.single(ObservationMember.CATEGORY.label(), () -> json.codings(List.of(BaseElements.EXAM)));
  }

  static void notes(Json json, List<String> remarks) {
    if (!remarks.isEmpty()) {
      json.list(
          ObservationMember.NOTE.label(),
          () -> remarks.forEach(line -> json.element(() -> json.text("text", line))));
    }
  }

  private void components(Finding<?> finding, EncodedValue panel) {
    if (panel.notation().isEmpty() && panel.parts().isEmpty()) {
      return;
    }
    Variant variant = finding.layout().variant(panel.notation()).orElseThrow();
    json.list(
        ObservationMember.COMPONENT.label(),
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
          json.concept(ValueType.CONCEPT.member(), notation.code());
        });
  }

  private void component(Part<?, ?> part, Outcome<Datum> outcome) {
    json.concept("code", part.code());
    outcome.ifFound().ifPresent(datum -> datum.fold(values));
    outcome.ifAbsent().ifPresent(reason -> DatumWriter.absent(json, reason.code()));
  }
}
