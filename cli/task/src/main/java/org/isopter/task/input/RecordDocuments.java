package org.isopter.task.input;

import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.report.RunLog;

/** Reads documents as records and hands on the examinations. */
public final class RecordDocuments {

  /** Takes an examination and the document that holds it. */
  @FunctionalInterface
  public interface Use {
    void take(InputDocument item, Exam exam);
  }

  private final Records records = new Records();
  private final RunLog log;

  /**
   * Makes a reader.
   *
   * @param log gets the faults of what is no record
   */
  public RecordDocuments(RunLog log) {
    this.log = log;
  }

  /** Hands on the examination of every document; one that cannot be read never stops the rest. */
  public void each(Iterable<InputSource> sources, Use use) {
    new InputDocuments(log).each(sources, item -> read(item, use));
  }

  private void read(InputDocument item, Use use) {
    Result<Exam> exam = records.read(item);
    if (exam instanceof Result.Ok<Exam> ok) {
      use.take(item, ok.value());
    } else {
      log.refuseFor(item.position(), exam.faults());
    }
  }
}
