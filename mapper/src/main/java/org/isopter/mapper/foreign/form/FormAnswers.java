package org.isopter.mapper.foreign.form;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.record.PlainJson;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordTree;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.form.Form;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.isopter.model.value.Times;

/**
 * Reads the answers to our own form, by the names of its questions, as the record that they fill.
 *
 * <p>They are taken whole or not at all: an answer that is not understood may change what another
 * one means.
 */
public final class FormAnswers {

  private final FormNames names;
  private final RecordReader reader;

  /** Makes a reader of the findings of a catalogue. */
  public FormAnswers(Catalogue catalogue) {
    this.names = new FormNames(catalogue);
    this.reader = new RecordReader(catalogue);
  }

  /** Says whether a resource answers our form, of whatever version. */
  public static boolean isOurs(Raw resource) {
    String form = resource.string("questionnaire").orElse("");
    return resource.string("resourceType").orElse("").equals("QuestionnaireResponse")
        && (form.equals(Form.URL) || form.startsWith(Form.URL + "|"));
  }

  /** Returns the facts of a response with the account of its leaves. */
  public Translation read(Raw response, Neighbours neighbours) {
    Ledger ledger = new Ledger(response);
    try {
      Place root = ledger.root();
      Head.guard(root);
      Status status = status(root);
      OffsetDateTime time = time(root);
      Party subject = Head.subject(root, neighbours);
      Optional<String> encounter =
          root.child("encounter").map(e -> e.text("reference")).filter(r -> !r.isEmpty());
      boolean known = subject.identifier().isPresent();
      Head head = new Head(subject, known, time, status, encounter, Optional.empty());
      FormEntries entries = FormEntries.of(names, root);
      Exam exam = exam(Header.of(Identifier.of("form"), subject, time), entries);
      entries.take();
      root.take(Ledger.CATALOGUE, "resourceType", "questionnaire");
      return new Translation(
          Optional.of(head), exam.facts(), ledger, List.of(), Optional.empty(), Optional.empty());
    } catch (Refusal refusal) {
      return Translation.kept(new Ledger(response), List.of(refusal.reason()));
    } catch (FaultException faults) {
      List<Reason> reasons = new ArrayList<>();
      faults.faults().forEach(fault -> reasons.add(new Reason(Why.VALUE_UNFIT, fault)));
      return Translation.kept(new Ledger(response), reasons);
    }
  }

  /** Reads the answers as a record, whose reader knows what each of them may be. */
  private Exam exam(Header header, FormEntries entries) throws Refusal {
    if (entries.isEmpty()) {
      throw Refusal.of(Why.NO_VALUE, "/item", "no answer", "an answer");
    }
    Map<String, Object> record = RecordTree.of(new Exam(header, List.of()));
    record.put("findings", entries.findings());
    Result<Exam> read = reader.readPlain(PlainJson.of(record));
    if (!read.isOk()) {
      throw new FaultException(read.faults().stream().map(FormAnswers::named).toList());
    }
    return read.orThrow();
  }

  /** Returns a fault of the record as one of the question that it is about. */
  private static Fault named(Fault fault) {
    int findings = fault.path().indexOf("findings.");
    String path = findings < 0 ? "" : fault.path().substring(findings + "findings.".length());
    return new Fault(
        "/item " + path.replace('.', '/'), fault.seen(), fault.wanted(), fault.advice());
  }

  private static Status status(Place response) throws Refusal {
    Status status =
        switch (response.text("status")) {
          case "completed", "amended" -> Status.FINAL;
          case "in-progress" -> Status.PRELIMINARY;
          default ->
              throw Refusal.of(
                  Why.RETRACTED,
                  "/status",
                  "\"" + response.text("status") + "\"",
                  "completed, amended or in-progress");
        };
    // What an amended one replaces is not known: the word stays with it.
    if (!response.text("status").equals("amended")) {
      response.take(Ledger.CATALOGUE, "status");
    }
    return status;
  }

  private static OffsetDateTime time(Place response) throws Refusal {
    String text = response.text("authored");
    try {
      OffsetDateTime time = OffsetDateTime.parse(text);
      if (Times.check(time).isEmpty()) {
        response.take(Ledger.CATALOGUE, "authored");
        return time;
      }
    } catch (DateTimeException noTime) {
      // Said below, as for a time that is out of bounds.
    }
    throw Refusal.of(
        Why.NO_TIME, "/authored", "\"" + text + "\"", "a time with its offset from UTC");
  }
}
