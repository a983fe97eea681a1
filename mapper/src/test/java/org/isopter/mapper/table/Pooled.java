package org.isopter.mapper.table;

import java.util.Collections;
import org.isopter.model.exam.Exam;

/** Examinations for tables, read from one place. */
final class Pooled {

  private Pooled() {}

  static PooledExam of(Exam exam) {
    return new PooledExam(
        exam, Person.UNKNOWN, Collections.nCopies(exam.facts().size(), FactOrigin.of("1", 7)));
  }
}
