package org.isopter.model.check;

import static java.util.Comparator.comparing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;

/** Holds an examination against the consistency rules. */
public final class Consistency {

  private Consistency() {}

  /** Returns every violation of the rules of {@link Rules#all()}, the worst first. */
  public static List<Violation> check(Exam exam) {
    return check(exam, Rules.all());
  }

  /** Returns every violation of these rules, the worst first, otherwise in the order of rules. */
  public static List<Violation> check(Exam exam, List<ConsistencyRule> rules) {
    ExamView view = ExamView.of(exam);
    List<Violation> all = new ArrayList<>();
    rules.forEach(rule -> all.addAll(rule.check(view)));
    all.sort(comparing(violation -> violation.rule().severity()));
    return Collections.unmodifiableList(all);
  }
}
