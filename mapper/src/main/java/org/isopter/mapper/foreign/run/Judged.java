package org.isopter.mapper.foreign.run;

import java.util.List;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;

/**
 * What a policy lets pass of documents that were read together.
 *
 * @param exams the examinations to write, each with what it is to carry
 * @param rest what is to be carried without an examination
 * @param refused the documents that the policy refuses
 */
public record Judged(List<ReadExam> exams, Carried rest, List<Origin> refused) {

  public Judged {
    exams = List.copyOf(exams);
    refused = List.copyOf(refused);
  }

  /** Says whether anything goes along beside the examinations. */
  public boolean carries() {
    return !rest.isEmpty() || exams.stream().anyMatch(exam -> !exam.carried().isEmpty());
  }
}
