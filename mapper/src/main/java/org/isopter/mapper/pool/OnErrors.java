package org.isopter.mapper.pool;

import java.util.List;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.ConsistencyRule;
import org.isopter.model.check.Rules;
import org.isopter.model.check.Severity;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;

/** What becomes of an examination that has errors by the consistency rules, whoever wrote it. */
public enum OnErrors {
  /** It is pooled, and nobody looks for errors. */
  NOT_LOOKED_FOR,
  /** It is pooled and named. */
  POOLED,
  /** It is named and left over. */
  LEFT_OVER;

  /** The others are not looked at: there are as many, and a pool has many examinations. */
  private static final List<ConsistencyRule> RULES =
      Rules.all().stream().filter(rule -> rule.severity() == Severity.ERROR).toList();

  /** Returns the errors of an examination, where they are looked for. */
  List<Violation> of(Exam exam) {
    return this == NOT_LOOKED_FOR ? List.of() : Consistency.check(exam, RULES);
  }
}
