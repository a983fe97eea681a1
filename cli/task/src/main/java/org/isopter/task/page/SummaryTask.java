package org.isopter.task.page;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.UrgencyRules;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * Writes records as letters, one page each: to the data of the log with an empty line between two,
 * or each to a file of its own.
 */
public final class SummaryTask {

  private final RunLog log;
  private final SummaryForm form;
  private final Letter letter;
  private final RecordErrors errors;
  private final Optional<PageFolder> folder;

  private SummaryTask(
      RunLog log,
      SummaryForm form,
      Letter letter,
      RecordErrors errors,
      Optional<PageFolder> folder) {
    this.log = log;
    this.form = form;
    this.letter = letter;
    this.errors = errors;
    this.folder = folder;
  }

  /** Makes a task that writes pages in a form. */
  public static SummaryTask of(RunLog log, SummaryForm form) {
    return of(log, form, SeenBy.USUAL);
  }

  /** Makes a task that writes pages in a form, with pictures seen from one side. */
  public static SummaryTask of(RunLog log, SummaryForm form, SeenBy view) {
    return new SummaryTask(
        log, form, form.letter(view), new RecordErrors(log, false), Optional.empty());
  }

  /** Returns this task with everything that follows from the findings, and from where. */
  public SummaryTask detailed(boolean detail) {
    return detail ? with(letter.detailed()) : this;
  }

  /** Returns this task with what is on a list of urgent findings; as it is where none is given. */
  public SummaryTask with(Optional<UrgencyRules> list) {
    return with(list.map(letter::with).orElse(letter));
  }

  private SummaryTask with(Letter other) {
    return new SummaryTask(log, form, other, errors, folder);
  }

  /** Returns this task, refusing records with errors by the consistency rules. */
  public SummaryTask strict(boolean strict) {
    return new SummaryTask(log, form, letter, new RecordErrors(log, strict), folder);
  }

  /** Returns this task with each page in a file of a folder, which is made where it is missing. */
  public SummaryTask into(Optional<Path> pages) {
    return new SummaryTask(
        log, form, letter, errors, pages.map(to -> new PageFolder(to, form.ending())));
  }

  /**
   * Writes the page of every record.
   *
   * @throws UsageException when pages in PDF are to go to the data of the log, which is text
   */
  public void run(Inputs inputs) {
    if (form == SummaryForm.PDF && folder.isEmpty()) {
      throw new UsageException(
          "--format pdf makes files, one for each record: name their folder with --output FOLDER");
    }
    new RecordDocuments(log).each(inputs.find(log), this::write);
    errors.sum();
  }

  private void write(InputDocument item, Exam exam) {
    if (!errors.admits(item.position(), exam)) {
      return;
    }
    String page = form.page(letter, exam);
    if (folder.isEmpty()) {
      log.data().print(log.done() > 0 ? "\n\n" + page : page);
      log.accept(item.position());
    } else {
      file(folder.get(), item, page);
    }
  }

  private void file(PageFolder to, InputDocument item, String page) {
    try {
      log.data().println(to.put(item, form.bytes(page)));
      log.accept(item.position());
    } catch (FaultException unprintable) {
      log.refuseFor(item.position(), unprintable.faults());
    }
  }
}
