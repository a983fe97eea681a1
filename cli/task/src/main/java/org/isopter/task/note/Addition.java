package org.isopter.task.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.entry.Amendment;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Identifier;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** Adds what a note says to a record of the same person, and replaces nothing in it. */
final class Addition {

  private Addition() {}

  /** Returns the record with both; refused where the note contradicts it or adds nothing. */
  static Result<Exam> to(Exam old, Exam note) {
    List<Fact<?>> facts = Amendment.timed(old, note);
    List<Fault> wrong = new ArrayList<>();
    otherPerson(old, note).ifPresent(wrong::add);
    for (Fact<?> fact : facts) {
      Amendment.clashing(old, List.of(fact)).forEach(other -> wrong.add(contradicted(fact, other)));
    }
    if (old.facts().containsAll(facts) && note.header().remark().isEmpty()) {
      facts.forEach(fact -> wrong.add(alreadySaid("--into", fact)));
    }
    return wrong.isEmpty() ? Result.ok(Amendment.added(old, note)) : Result.refused(wrong);
  }

  /** Returns that the record has a fact already. */
  static Fault alreadySaid(String path, Fact<?> fact) {
    return Fault.of(path, RecordText.of(fact), "what the record does not say already");
  }

  private static Fault contradicted(Fact<?> fact, Fact<?> other) {
    return new Fault(
        "--into",
        RecordText.of(fact),
        "what does not contradict the record, which holds " + RecordText.of(other),
        "isopter amend replaces it");
  }

  /** A note of somebody else is the worst slip of all; a record may know who gave out the id. */
  private static Optional<Fault> otherPerson(Exam old, Exam exam) {
    Optional<String> person = id(old);
    Optional<String> said = id(exam);
    return person.equals(said)
        ? Optional.empty()
        : Optional.of(
            Fault.of(
                "--subject",
                said.orElse("nobody"),
                "the person of the record: " + person.orElse("not known by an id")));
  }

  private static Optional<String> id(Exam exam) {
    return exam.header().subject().identifier().map(Identifier::value);
  }
}
