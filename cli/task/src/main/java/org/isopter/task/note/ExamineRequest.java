package org.isopter.task.note;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.exam.Header;
import org.isopter.model.note.habit.Habits;

/**
 * What an examination that is entered step by step is to become.
 *
 * @param subject the id of the person examined; empty to ask for it
 * @param id the id of the record; empty to make one
 * @param performed when; empty for now
 * @param headers what makes the header of the examination of a person
 * @param habits the phrases and habits of the department
 * @param name where to write, without the endings
 * @param replace whether to write over what is there
 */
public record ExamineRequest(
    Optional<String> subject,
    Optional<String> id,
    Optional<OffsetDateTime> performed,
    Function<String, Header> headers,
    Habits habits,
    Path name,
    boolean replace) {

  /** Returns a request of a department without habits of its own. */
  public static ExamineRequest of(String subject, Path name) {
    return new ExamineRequest(
        Optional.of(subject),
        Optional.empty(),
        Optional.empty(),
        person -> HeaderRequest.of(person).header(),
        Habits.none(),
        name,
        false);
  }

  /** Returns this request, to write over what is there. */
  public ExamineRequest replacing() {
    return new ExamineRequest(subject, id, performed, headers, habits, name, true);
  }

  Header header(String person) {
    return headers.apply(person);
  }
}
