package org.isopter.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.entry.Amendment;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * What a sheet starts from: a header of its own, or a record that it amends.
 *
 * @param id the identifier of what is written
 * @param text the record to amend as text; empty for a new one
 * @param old the record to amend
 * @param header the header; nothing when it is faulty
 * @param faults what is wrong with it
 */
record SheetStart(
    String id, String text, Optional<Exam> old, Optional<Header> header, List<String> faults) {

  private static final RecordReader READER = new RecordReader(Catalogue.standard());

  /**
   * Reads the start of a form.
   *
   * @param last the start that was read before, whose record is not read a second time
   */
  static SheetStart of(SheetForm form, Optional<SheetStart> last) {
    String text = form.words("old");
    String id = form.words("id");
    if (text.isEmpty()) {
      return of(id, text, Optional.empty(), form.header());
    }
    Optional<SheetStart> same =
        last.filter(start -> start.text.equals(text) && start.id.equals(id));
    return same.orElseGet(() -> amending(id, text));
  }

  private static SheetStart of(String id, String text, Optional<Exam> old, Result<Header> header) {
    return new SheetStart(
        id,
        text,
        old,
        header.isOk() ? Optional.of(header.orThrow()) : Optional.empty(),
        header.faults().stream().map(Object::toString).toList());
  }

  private static SheetStart amending(String id, String text) {
    Result<Exam> read = READER.readPlain(text);
    if (!read.isOk()) {
      List<String> faults = new ArrayList<>();
      faults.add("The record cannot be opened.");
      read.faults().forEach(fault -> faults.add(fault.toString()));
      return new SheetStart(id, text, Optional.empty(), Optional.empty(), faults);
    }
    Exam old = read.orThrow();
    if (old.header().id().value().equals(id)) {
      return new SheetStart(
          id,
          text,
          Optional.of(old),
          Optional.empty(),
          List.of("An amended record needs an identifier of its own."));
    }
    try {
      Identifier.of(id);
      return of(id, text, Optional.of(old), Result.ok(old.header()));
    } catch (FaultException noIdentifier) {
      return of(id, text, Optional.of(old), Result.refused(noIdentifier.faults()));
    }
  }

  /**
   * Returns the examination with these facts: a new one, or the record with what they change.
   *
   * @throws java.util.NoSuchElementException when the header is faulty
   */
  Exam exam(List<Fact<?>> facts) {
    return old.map(before -> Amendment.of(before, Identifier.of(id), facts))
        .orElseGet(() -> new Exam(header.orElseThrow(), facts));
  }

  /** Returns what a field of the header shows of a person. */
  static String shown(Party party) {
    return party.identifier().map(Identifier::value).or(party::name).orElse("");
  }
}
