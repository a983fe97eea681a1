package org.isopter.task.note;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputForm;
import org.isopter.task.report.UsageException;

/**
 * What a note is turned into.
 *
 * @param header what stands above the record
 * @param habits the phrases and habits of the department
 * @param keepUnread whether what is not understood is kept as a remark, word for word; nothing is
 *     written otherwise
 * @param questions the file for what is not clear, as JSON; empty for none
 * @param answers a file of answers to such questions; empty for none
 * @param into a record to which the facts of the note are added; empty for a new one
 * @param form the form of the record
 * @param letter whether the letter follows the record
 */
public record NoteRequest(
    Header header,
    Habits habits,
    boolean keepUnread,
    Optional<Path> questions,
    Optional<Path> answers,
    Optional<Path> into,
    InputForm form,
    boolean letter) {

  /** Returns a request for a record in YAML of a note that is understood to its last word. */
  public static NoteRequest of(Header header) {
    return new NoteRequest(
        header,
        Habits.none(),
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        InputForm.YAML,
        false);
  }

  /**
   * Returns the id of the person of a record that is to be added to.
   *
   * @throws UsageException when the record cannot be read, or knows nobody by an id
   */
  public static String subject(Path record) {
    Result<Exam> read = StoredRecord.read(record);
    if (!read.isOk()) {
      throw new UsageException(read.faults().get(0).toString());
    }
    return read.orThrow()
        .header()
        .subject()
        .identifier()
        .map(Identifier::value)
        .orElseThrow(
            () ->
                new UsageException(
                    record + ": saw a person without an id, wanted one who is known by an id"));
  }
}
