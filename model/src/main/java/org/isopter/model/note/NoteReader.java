package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.model.value.TextCheck;

/**
 * Reads bedside shorthand; see {@code docs/shorthand.md} for what it understands.
 *
 * <p>It never guesses a side, a unit or a notation, and gives back every item that it does not
 * understand to the last word. Instances do not change and may be shared between threads.
 */
public final class NoteReader {

  private static final Headings HEADINGS = new Headings(Grammars.ALL);

  private final Optional<OffsetDateTime> performed;
  private final Habits habits;
  private final FormTrial.Extent extent;

  private NoteReader(Optional<OffsetDateTime> performed, Habits habits, FormTrial.Extent extent) {
    this.performed = performed;
    this.habits = habits;
    this.extent = extent;
  }

  /** Returns a reader of notes whose day is not known: a time of day is refused. */
  public static NoteReader standard() {
    return new NoteReader(Optional.empty(), Habits.none(), FormTrial.Extent.NEAR_FORMS);
  }

  /** Returns a reader of notes of an examination, to whose day and offset a time of day belongs. */
  public static NoteReader performed(OffsetDateTime when) {
    return new NoteReader(
        Optional.of(Objects.requireNonNull(when, "when")),
        Habits.none(),
        FormTrial.Extent.NEAR_FORMS);
  }

  /** Reads a note; what is not understood is in the answer beside what is. */
  public Note read(String text) {
    Note note = new NoteReading(text, HEADINGS, performed, habits, extent).read();
    return note.unread().stream()
        .filter(unread -> habits.chosen(unread.readings()).isPresent())
        .findFirst()
        .map(unread -> read(answered(text, unread, habits.chosen(unread.readings()).orElseThrow())))
        .orElse(note);
  }

  /**
   * Returns this reader for programs: it reads the same, and an item that is not read says why but
   * names no form near to it, for which many forms would be tried.
   */
  public NoteReader withoutAdvice() {
    return new NoteReader(performed, habits, FormTrial.Extent.MEANINGS);
  }

  /** Returns a reader of what a department with these habits writes. */
  public NoteReader habits(Habits ofDepartment) {
    return new NoteReader(performed, ofDepartment, extent);
  }

  /** Returns the note with an item put in the form of one of its readings. */
  public static String answered(String text, Unread unread, PossibleReading reading) {
    return text.substring(0, unread.start())
        + reading.text()
        + text.substring(unread.start() + unread.text().length());
  }

  /** Returns the facts of a note, or a fault for every item that was not understood. */
  public Result<List<Fact<?>>> facts(String text) {
    return read(text).strict();
  }

  /** Returns the examination that a note tells, or a fault for every item not understood. */
  public static Result<Exam> exam(Header header, String text) {
    return performed(header.performed()).facts(text).map(facts -> new Exam(header, facts));
  }

  /**
   * Returns the examination that a note tells; every item that was not understood, and all of a
   * contradiction, is kept word for word at the end of the remark on the whole examination. Refused
   * only where such an item holds a character that no record can carry.
   */
  public static Result<Exam> keepUnread(Header header, String text) {
    return performed(header.performed()).withoutAdvice().keeping(header, text);
  }

  /** Returns the same by the habits of this reader. */
  public Result<Exam> keeping(Header header, String text) {
    Note note = read(text);
    List<Fault> unfit = note.unread().stream().flatMap(NoteReader::unfit).toList();
    return unfit.isEmpty()
        ? Result.ok(new Exam(withRemark(header, note), note.facts()))
        : Result.refused(unfit);
  }

  private static Stream<Fault> unfit(Unread unread) {
    return TextCheck.check(unread.text()).stream().map(fault -> fault.at(unread.place()));
  }

  private static Header withRemark(Header header, Note note) {
    String remark =
        Stream.concat(header.remark().stream(), note.remark().stream())
            .collect(Collectors.joining("\n"));
    return new Header(
        header.id(),
        header.subject(),
        header.demographics(),
        header.performer(),
        header.performed(),
        header.status(),
        header.setting(),
        header.amends(),
        Optional.of(remark).filter(some -> !some.isEmpty()));
  }
}
