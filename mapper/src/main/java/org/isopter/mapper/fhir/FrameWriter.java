package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.element.FrameCodes;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.Narrative;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Header;
import org.isopter.model.wire.ObservationMember;

/** Writes the resources around the findings: panel, report, provenance and composition. */
final class FrameWriter {

  /** What the software calls itself and its version. */
  static final String SOFTWARE = "Isopter " + Version.TEXT;

  static final String FINDINGS = "Findings";

  private final Json json;
  private final Exam exam;
  private final Header header;
  private final Ids ids;

  FrameWriter(Json json, Exam exam, Ids ids) {
    this.json = json;
    this.exam = exam;
    this.header = exam.header();
    this.ids = ids;
  }

  void panel(Optional<String> id, List<String> members) {
    json.text("resourceType", "Observation");
    json.text("id", id);
    ObservationWriter.profile(json, ExamCodes.PANEL.code());
    json.narrative(Narrative.of(exam));
    Replaced.write(json, header);
    for (ObservationMember member : ObservationMember.all()) {
      content(member, members).run();
    }
  }

  /** Returns what writes a member of the panel, where the header has something to say there. */
  private Runnable content(ObservationMember member, List<String> members) {
    String name = member.label();
    return switch (member) {
      case MODIFIER_EXTENSION, FOCUS, VALUE, ABSENT_REASON, BODY_SITE, METHOD, SPECIMEN, DEVICE ->
          () -> {};
      case IDENTIFIER -> this::recordIdentifiers;
      case STATUS -> () -> json.text(name, header.status().word());
      case CATEGORY -> () -> ObservationWriter.category(json);
      case CODE -> () -> json.object(name, this::panelCode);
      case SUBJECT -> () -> Frame.subject(json, header);
      case EFFECTIVE -> () -> Frame.effective(json, header.performed());
      case PERFORMER -> () -> Frame.performer(json, header);
      case NOTE -> () -> ObservationWriter.notes(json, header.remark().stream().toList());
      case HAS_MEMBER -> members.isEmpty() ? () -> {} : () -> references(name, members);
      case COMPONENT -> () -> HeaderComponents.write(json, header);
    };
  }

  private void panelCode() {
    json.codings(List.of(ExamCodes.PANEL));
    json.text("text", ExamCodes.PANEL.display());
  }

  void report(Optional<String> id, String panel, GivenOut said) {
    json.text("resourceType", "DiagnosticReport");
    json.text("id", id);
    json.narrative(Narrative.of(exam));
    recordIdentifiers();
    json.text("status", header.status().word());
    json.concept("code", ExamCodes.REPORT);
    Frame.people(json, header, header.performed());
    said.issued().ifPresent(at -> json.text("issued", Frame.time(at)));
    references("result", List.of(panel));
    said.conclusion(exam).ifPresent(text -> json.text("conclusion", text));
  }

  void provenance(String id, List<String> targets, Optional<String> hash) {
    json.text("resourceType", "Provenance");
    json.text("id", id);
    references("target", targets);
    json.text("recorded", Frame.time(header.performed()));
    json.single(
        "agent",
        () -> {
          json.object("type", () -> json.codings(List.of(ExamCodes.ASSEMBLER)));
          json.object("who", () -> software(json));
        });
    if (hash.isPresent() || header.amends().isPresent()) {
      json.list("entity", () -> entities(hash));
    }
  }

  /**
   * Writes the first entry of a document.
   *
   * @param entries what was seen
   * @param derived what follows from it, in a section of its own when there is any
   * @param statements the same in words
   */
  void composition(
      Optional<String> id, List<String> entries, List<String> derived, List<Derived> statements) {
    json.text("resourceType", "Composition");
    json.text("id", id);
    json.narrative(Narrative.of(exam));
    json.object("identifier", () -> json.identifier(ids.system(), ids.record()));
    json.text("status", header.status().word());
    json.concept("type", ExamCodes.REPORT);
    json.object("subject", () -> json.party("Patient", header.subject()));
    json.text("date", Frame.time(header.performed()));
    json.single("author", this::author);
    json.text("title", ExamCodes.PANEL.display());
    json.list(
        "section",
        () -> {
          section(FINDINGS, Narrative.ofFacts(exam), entries);
          if (!derived.isEmpty()) {
            String text = Narrative.of(statements);
            section(ExamCodes.DERIVED.display(), text, derived);
          }
        });
  }

  private void section(String title, String narrative, List<String> entries) {
    json.element(
        () -> {
          json.text("title", title);
          json.narrative(narrative);
          references("entry", entries);
        });
  }

  private void author() {
    header.performer().ifPresentOrElse(by -> json.party("Practitioner", by), () -> software(json));
  }

  private void entities(Optional<String> hash) {
    hash.ifPresent(sum -> entity("source", FrameCodes.HASH_SYSTEM, sum));
    header.amends().map(Ids::of).ifPresent(old -> entity("revision", old.system(), old.record()));
  }

  private void entity(String role, String system, String value) {
    json.element(
        () -> {
          json.text("role", role);
          json.object(
              "what", () -> json.object("identifier", () -> json.identifier(system, value)));
        });
  }

  private void recordIdentifiers() {
    json.single("identifier", () -> json.identifier(ids.system(), ids.record()));
  }

  private void references(String name, List<String> urns) {
    json.list(name, () -> urns.forEach(urn -> json.element(() -> json.reference(urn))));
  }

  private static void software(Json json) {
    json.text("type", "Device");
    json.object(
        "identifier", () -> json.identifier(FrameCodes.SOFTWARE_SYSTEM, FrameCodes.SOFTWARE));
    json.text("display", SOFTWARE);
  }
}
