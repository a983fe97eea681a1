package org.isopter.mapper.message;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Result;

/**
 * A fact as a message gives it back.
 *
 * @param fact the fact without its time
 * @param time when it was found
 * @param subject of whom
 */
record Reread(Fact<?> fact, OffsetDateTime time, Optional<Identifier> subject) {

  /** Returns the facts of an examination. */
  static List<Reread> of(Exam exam) {
    Header header = exam.header();
    return exam.facts().stream()
        .map(
            fact ->
                new Reread(
                    fact.withoutTime(),
                    fact.at().orElse(header.performed()),
                    header.subject().identifier()))
        .toList();
  }

  /** Returns the facts that a reader makes of a message. */
  static Result<List<Reread>> of(String message, ForeignReader reader) {
    return V2Reader.read(message.getBytes(UTF_8))
        .map(
            raw -> {
              List<Reread> all = new ArrayList<>();
              reader.readTogether(List.of(raw)).exams().stream()
                  .map(ReadExam::exam)
                  .forEach(exam -> all.addAll(of(exam)));
              return all;
            });
  }
}
