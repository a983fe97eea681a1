package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.entry.UsualStep;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
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

  /** Returns a row for each eye and each step that entry asks for. */
  public static List<StepRow> of(ExamView view) {
    List<StepRow> rows = new ArrayList<>();
    for (Site eye : Site.EACH_EYE) {
      for (UsualStep step : UsualStep.ASKED) {
        rows.add(of(view, step, eye));
      }
    }
    return rows;
  }

  private static StepRow of(ExamView exam, UsualStep step, Site eye) {
    List<Fact<?>> facts = facts(exam, step, eye);
    boolean found = facts.stream().anyMatch(fact -> fact.outcome().ifAbsent().isEmpty());
    Optional<Absence> absent =
        facts.stream().flatMap(fact -> fact.outcome().ifAbsent().stream()).findFirst();
    State silent = facts.isEmpty() ? State.NOT_RECORDED : State.NOT_EXAMINED;
    return new StepRow(
        exam.exam(), step, eye, found ? State.EXAMINED : silent, absent.filter(reason -> !found));
  }

  /** Returns the facts of a step at an eye, or at both eyes together. */
  private static List<Fact<?>> facts(ExamView exam, UsualStep step, Site eye) {
    return exam.findings()
        .filter(step.findings()::contains)
        .<Fact<?>>flatMap(exam::facts)
        .filter(fact -> fact.site() == eye || fact.site() == Site.BOTH)
        .toList();
  }
}
