package org.isopter.task.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.TrendPage;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Compares the records of one person, each with the one before it in time. */
public final class CompareTask {

  private final RunLog log;
  private final CompareForm form;
  private final boolean all;

  /**
   * Makes a task.
   *
   * @param form text, a line of JSON for each pair, or a page with pictures over time
   * @param all whether to list what stayed the same too
   */
  public CompareTask(RunLog log, CompareForm form, boolean all) {
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
          Messages.count(visits.size(), "record") + " to compare: two or more are needed");
    }
    List<String> changes = new ArrayList<>();
    for (int i = 1; i < visits.size(); i++) {
      compare(visits.get(i - 1), visits.get(i)).ifPresent(changes::add);
    }
    // A page of several people would be of nobody: it is written only where all are of one.
    if (form != CompareForm.HTML) {
      changes.forEach(log.data()::print);
    } else if (!changes.isEmpty() && changes.size() == visits.size() - 1) {
      log.data().print(TrendPage.html(visits.stream().map(Visit::exam).toList(), changes));
    }
  }

  private Optional<String> compare(Visit earlier, Visit later) {
    Result<Comparison> compared = Comparison.of(earlier.exam(), later.exam());
    if (compared instanceof Result.Ok<Comparison> ok) {
      log.accept(later.item().position());
      return Optional.of(text(ok.value()));
    }
    log.refuseFor(later.item().position(), compared.faults());
    return Optional.empty();
  }

  private String text(Comparison comparison) {
    return form == CompareForm.JSON
        ? ComparisonJson.of(comparison, all)
        : ComparisonText.of(comparison, all);
  }
}
