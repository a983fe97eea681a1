package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;

/**
 * What became of a step of the usual order at an eye of an examination.
 *
 * @param exam the examination
 * @param step the step
 * @param eye the right or the left
 * @param state whether it was examined
 * @param absent why not, where it is recorded that it was not
 */
public record StepRow(Exam exam, UsualStep step, Site eye, State state, Optional<Absence> absent) {

  /** Whether a step was examined: that nothing is recorded says neither that it was nor was not. */
  public enum State {
    /** A value is recorded. */
    EXAMINED,
    /** That there is no value is recorded, with a reason. */
    NOT_EXAMINED,
    /** Nothing is recorded. */
    NOT_RECORDED;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /** Returns a row for each eye and step. */
  public static List<StepRow> of(Exam exam) {
    ExamView view = ExamView.of(exam);
    List<StepRow> rows = new ArrayList<>();
    for (Site eye : List.of(Site.RIGHT, Site.LEFT)) {
      for (UsualStep step : UsualStep.values()) {
        rows.add(step.at(view, eye));
      }
    }
    return rows;
  }
}
