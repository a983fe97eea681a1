package org.isopter.model.entry;

import java.util.List;
import java.util.Optional;
import org.isopter.model.note.NoteReader;

/** Reads what is answered to a step; behind the last step an answer needs its heading. */
final class StepReader {

  private final NoteReader reader;

  StepReader(NoteReader reader) {
    this.reader = reader;
  }

  static EntryField field(int step) {
    return UsualStep.ASKED.get(step).question();
  }

  /** Returns the words before an answer, in a message. */
  static String title(int step) {
    return step == EntryAnswers.MORE ? "besides" : field(step).title();
  }

  HeadedAnswer read(String text) {
    return HeadedAnswer.of(reader, text);
  }

  /** Returns the ways to read an answer, in the order in which they are to be tried. */
  List<HeadedAnswer> ways(int step, String answer) {
    return step == EntryAnswers.MORE
        ? List.of(read(answer))
        : HeadedAnswer.ways(reader, "", field(step).heading(), answer);
  }

  /** Returns the first of the ways in which all is understood and meant for the step. */
  static Optional<HeadedAnswer> clear(int step, List<HeadedAnswer> ways) {
    String heading = step == EntryAnswers.MORE ? "VA" : field(step).heading();
    return ways.stream().filter(way -> way.isClear() && !way.isStray(heading)).findFirst();
  }

  /** Returns that a step was not done, and why; empty where no such reason is understood. */
  Optional<HeadedAnswer> absent(int step, String reason) {
    String why = reason.isBlank() ? "not done" : reason.strip();
    return Optional.of(read(field(step).heading() + " " + why))
        .filter(HeadedAnswer::isClear)
        .filter(
            answer ->
                answer.note().facts().stream()
                    .allMatch(fact -> fact.outcome().ifAbsent().isPresent()));
  }
}
