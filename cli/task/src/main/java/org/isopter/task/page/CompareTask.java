package org.isopter.task.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.isopter.task.report.WordForm;

/** Compares the records of one person, each with the one before it in time. */
public final class CompareTask {

  private final RunLog log;
  private final WordForm form;
  private final boolean all;

  /**
   * Makes a task.
   *
   * @param form text, or a line of JSON for each pair
   * @param all whether to list what stayed the same too
   */
  public CompareTask(RunLog log, WordForm form, boolean all) {
    this.log = log;
    this.form = form;
    this.all = all;
  }

  /**
   * One record of several.
   *
   * @param item where it comes from
   * @param exam what it holds
   */
  private record Visit(InputDocument item, Exam exam) {}

  /**
   * Writes what changed; records of different persons are refused.
   *
   * @throws UsageException when there are fewer than two records
   */
  public void run(Inputs inputs) {
    List<Visit> visits = new ArrayList<>();
    new RecordDocuments(log)
        .each(inputs.find(log), (item, exam) -> visits.add(new Visit(item, exam)));
    visits.sort(Comparator.comparing(visit -> visit.exam().header().performed()));
    if (visits.size() < 2 && log.status() == ExitStatus.OK) {
      throw new UsageException(
          "there are " + visits.size() + " records to compare: two or more are needed");
    }
    for (int i = 1; i < visits.size(); i++) {
      compare(visits.get(i - 1), visits.get(i));
    }
  }

  private void compare(Visit earlier, Visit later) {
    Result<Comparison> compared = Comparison.of(earlier.exam(), later.exam());
    if (compared instanceof Result.Ok<Comparison> ok) {
      log.data().print(text(ok.value()));
      log.accept(later.item().position());
    } else {
      log.refuseFor(later.item().position(), compared.faults());
    }
  }

  private String text(Comparison comparison) {
    return form == WordForm.TEXT
        ? ComparisonText.of(comparison, all)
        : ComparisonJson.of(comparison, all);
  }
}
