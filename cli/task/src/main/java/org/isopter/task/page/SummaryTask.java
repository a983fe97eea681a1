package org.isopter.task.page;

import java.util.Optional;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.Summary;
import org.isopter.model.letter.UrgencyRules;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;

/** Writes records as letters: one page each, an empty line between two. */
public final class SummaryTask {

  private final RunLog log;
  private final Letter letter;
  private final SummaryStyle style;
  private final RecordErrors errors;

  private SummaryTask(RunLog log, Letter letter, SummaryStyle style, RecordErrors errors) {
    this.log = log;
    this.letter = letter;
    this.style = style;
    this.errors = errors;
  }

  /** Makes a task that writes pages in a form and style. */
  public static SummaryTask of(RunLog log, SummaryForm form, SummaryStyle style) {
    return of(log, form, style, SeenBy.USUAL);
  }

  /** Makes a task that writes pages in a form and style, with pictures seen from one side. */
  public static SummaryTask of(RunLog log, SummaryForm form, SummaryStyle style, SeenBy view) {
    return new SummaryTask(log, form.letter(view), style, new RecordErrors(log, false));
  }

  /** Returns this task with everything that follows from the findings, and from where. */
  public SummaryTask detailed(boolean detail) {
    return detail ? new SummaryTask(log, letter.detailed(), style, errors) : this;
  }

  /** Returns this task with what is on a list of urgent findings; as it is where none is given. */
  public SummaryTask with(Optional<UrgencyRules> list) {
    return new SummaryTask(log, list.map(letter::with).orElse(letter), style, errors);
  }

  /** Returns this task, refusing records with errors by the consistency rules. */
  public SummaryTask strict(boolean strict) {
    return new SummaryTask(log, letter, style, new RecordErrors(log, strict));
  }

  /** Writes the page of every record to the data of the log. */
  public void run(Inputs inputs) {
    new RecordDocuments(log).each(inputs.find(log), this::write);
    errors.sum();
  }

  private void write(InputDocument item, Exam exam) {
    if (!errors.admits(item.position(), exam)) {
      return;
    }
    String page = letter.write(Summary.of(exam, style.words()));
    log.data().print(log.done() > 0 ? "\n\n" + page : page);
    log.accept(item.position());
  }
}
