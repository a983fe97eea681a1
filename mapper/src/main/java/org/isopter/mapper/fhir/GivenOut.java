package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Summary;

/**
 * What a report says of itself, which no record does: when it was given out, and what follows from
 * the findings, in words.
 *
 * @param issued when it was given out; empty where the caller does not say it
 * @param concluding whether the sentences of the letter about what follows go along
 */
public record GivenOut(Optional<OffsetDateTime> issued, boolean concluding) {

  /** A report that says neither. */
  public static final GivenOut NOTHING = new GivenOut(Optional.empty(), false);

  /** How a conclusion begins: the examiner did not write it. */
  private static final String MARK = "Derived from the findings, not written by the examiner. ";

  /** Returns the conclusion, where it is asked for and something follows. */
  Optional<String> conclusion(Exam exam) {
    return concluding ? derived(exam) : Optional.empty();
  }

  /** Returns what follows from the findings of an examination, marked as that. */
  static Optional<String> derived(Exam exam) {
    List<String> sentences = Summary.of(exam).derived();
    return sentences.isEmpty()
        ? Optional.empty()
        : Optional.of(MARK + String.join(" ", sentences) + " " + Caution.TEXT);
  }
}
