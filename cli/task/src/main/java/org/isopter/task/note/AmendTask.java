package org.isopter.task.note;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.check.Consistency;
import org.isopter.model.entry.Amendment;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Identifier;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Amends a record by shorthand: a new record that names the old one, which stays as it is. */
public final class AmendTask {

  private final RunLog log;
  private final Optional<String> id;
  private final Habits habits;

  /** Makes a task that makes an id, of a department without habits of its own. */
  public AmendTask(RunLog log) {
    this(log, Optional.empty(), Habits.none());
  }

  /**
   * Makes a task.
   *
   * @param id the id of the new record; empty to make one
   * @param habits the phrases and habits of the department
   */
  public AmendTask(RunLog log, Optional<String> id, Habits habits) {
    this.log = log;
    this.id = id;
    this.habits = habits;
  }

  /**
   * Writes the amended record to the data of the log, in the form of the old one. A record or text
   * that cannot be read raises the status to {@link ExitStatus#REFUSED}.
   *
   * @param record the file of the old record
   * @param text what is to be changed or added, in shorthand
   * @throws IOException when the terminal cannot be asked
   * @throws UsageException when the id is none, or that of the old record
   */
  public void run(Path record, String text) throws IOException {
    Result<Exam> old = StoredRecord.read(record);
    if (old instanceof Result.Ok<Exam> exam) {
      amend(exam.value(), text, StoredRecord.format(record));
    } else {
      old.faults().forEach(fault -> log.say(fault.toString()));
      log.raise(ExitStatus.REFUSED);
    }
  }

  private void amend(Exam old, String text, RecordFormat format) throws IOException {
    NoteReader reader = NoteReader.performed(old.header().performed()).habits(habits);
    boolean asks = log.streams().terminal();
    Note note = reader.read(asks ? Asking.on(log.streams(), reader).about(text) : text);
    note.unread().forEach(unread -> log.say(unread.toString()));
    if (note.unread().isEmpty()) {
      amend(old, note.facts(), format);
    } else {
      refuse();
    }
  }

  private void amend(Exam old, List<Fact<?>> facts, RecordFormat format) {
    List<Fault> wrong = wrong(old, facts);
    if (!wrong.isEmpty()) {
      wrong.forEach(fault -> log.say(fault.toString()));
      refuse();
      return;
    }
    Exam amended = Amendment.of(old, newId(old), facts);
    Amendment.replaced(old, facts).forEach(fact -> log.say("replaced: " + RecordText.of(fact)));
    facts.stream()
        .filter(fact -> !old.facts().contains(fact))
        .forEach(fact -> log.say("recorded: " + RecordText.of(fact)));
    Consistency.check(amended).forEach(violation -> log.say(NoteTask.lookAgain(violation)));
    log.data().print(new RecordWriter().write(amended, format));
  }

  /**
   * Returns what keeps the facts from amending the record; a record is never amended by nothing.
   */
  private static List<Fault> wrong(Exam old, List<Fact<?>> facts) {
    if (facts.isEmpty()) {
      return List.of(Fault.of("TEXT", "nothing", "what is to be changed or added: IOP R 14 GAT"));
    }
    return old.facts().containsAll(facts)
        ? facts.stream().map(fact -> Addition.alreadySaid("TEXT", fact)).toList()
        : Amendment.unclear(old, facts);
  }

  private Identifier newId(Exam old) {
    Identifier made = HeaderRequest.id(id, habits.settings());
    if (made.value().equals(old.header().id().value())) {
      throw new UsageException(
          "--id: saw %s, the id of the record that is amended, wanted another one"
              .formatted(made.value()));
    }
    return made;
  }

  private void refuse() {
    log.say("nothing was amended");
    log.raise(ExitStatus.REFUSED);
  }
}
