package org.isopter.mapper.fhir;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.FrameCodes;
import org.isopter.mapper.fhir.element.People;
import org.isopter.mapper.fhir.element.PrimitiveForm;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;

/** Takes the resources around panel and findings. */
final class FrameReader {

  private FrameReader() {}

  static void report(ElementCursor report, Header header) {
    Transport.resource(report);
    expectRecord(report.only("identifier"), header);
    report.expect("status", header.status().word());
    Codings.expect(report, "code", ExamCodes.REPORT);
    People.expectPeople(report, header);
    report.expect(Frame.EFFECTIVE, Frame.time(header.performed()));
    report.drop("issued", PrimitiveForm.INSTANT);
  }

  /** Takes a conclusion that says what follows from the facts, and is made again like that. */
  static void conclusion(ElementCursor report, Exam exam) {
    if (report.has("conclusion")) {
      report.expect("conclusion", GivenOut.derived(exam).orElse("no conclusion"));
    }
  }

  static void composition(ElementCursor composition, Header header) {
    Transport.resource(composition);
    expectRecord(composition.required("identifier"), header);
    composition.expect("status", header.status().word());
    Codings.expect(composition, "type", ExamCodes.REPORT);
    composition
        .required("subject")
        .flatMap(subject -> People.party(subject, "Patient"))
        .filter(seen -> !seen.equals(header.subject()))
        .ifPresent(seen -> composition.fault("subject", seen.toString(), "the person examined"));
    composition.expect("date", Frame.time(header.performed()));
    composition.only("author").ifPresent(author -> author(author, header));
    composition.expect("title", ExamCodes.PANEL.display());
    List<ElementCursor> sections = composition.objects("section");
    List<String> titles = List.of(FrameWriter.FINDINGS, ExamCodes.DERIVED.display());
    if (sections.isEmpty() || sections.size() > titles.size()) {
      composition.fault("section", sections.size() + " of them", "at most one of each " + titles);
      return;
    }
    for (int i = 0; i < sections.size(); i++) {
      sections.get(i).expect("title", titles.get(i));
      Transport.narrative(sections.get(i));
    }
  }

  private static void author(ElementCursor author, Header header) {
    Optional<Party> performer = header.performer();
    if (performer.isEmpty()) {
      software(author);
      return;
    }
    Optional<Party> seen = People.party(author, "Practitioner");
    if (seen.isPresent() && !seen.equals(performer)) {
      author.fault("", seen.get().toString(), performer.get().toString());
    }
  }

  private static void agent(ElementCursor agent) {
    Codings.expect(agent, "type", ExamCodes.ASSEMBLER);
    agent.required("who").ifPresent(FrameReader::software);
  }

  /** Takes our own name; which version of ours it was means nothing else. */
  private static void software(ElementCursor by) {
    by.expect("type", "Device");
    by.required("identifier")
        .ifPresent(
            identifier -> {
              identifier.expect("system", FrameCodes.SOFTWARE_SYSTEM);
              identifier.expect("value", FrameCodes.SOFTWARE);
            });
    by.drop("display", PrimitiveForm.TEXT);
  }

  /** Takes the provenance; returns the record that it says is replaced. */
  static Optional<Identifier> provenance(ElementCursor provenance) {
    Transport.resource(provenance);
    provenance.require("recorded");
    provenance.drop("recorded", PrimitiveForm.INSTANT);
    provenance.only("agent").ifPresent(FrameReader::agent);
    Optional<Identifier> replaced = Optional.empty();
    for (ElementCursor entity : provenance.objects("entity")) {
      String role = entity.text("role").orElse("");
      Optional<Identifier> what =
          entity
              .required("what")
              .flatMap(reference -> reference.required("identifier"))
              .flatMap(People::record);
      if (role.equals("revision")) {
        replaced = what;
      } else if (!role.equals("source")) {
        entity.fault("role", "\"" + role + "\"", "\"source\" or \"revision\"");
      }
    }
    return replaced;
  }

  static void bundle(ElementCursor bundle, Header header) {
    Transport.bundle(bundle);
    if (bundle.has("identifier")) {
      expectRecord(bundle.object("identifier"), header);
    }
  }

  private static void expectRecord(Optional<ElementCursor> identifier, Header header) {
    identifier
        .flatMap(People::record)
        .filter(seen -> !seen.equals(header.id()))
        .flatMap(seen -> identifier)
        .ifPresent(cursor -> cursor.fault("", "another record's", header.id().toString()));
  }
}
