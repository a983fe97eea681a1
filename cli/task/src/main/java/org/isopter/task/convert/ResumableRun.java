package org.isopter.task.convert;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.isopter.mapper.foreign.run.NdjsonFiles;
import org.isopter.mapper.foreign.run.NdjsonRun;
import org.isopter.model.value.FaultException;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;

/** Reads one file of lines into another; such a run can be stopped and resumed. */
public final class ResumableRun {

  private final ReadingOptions foreign;
  private final ForeignReporter told;
  private final Progress progress;
  private final RunLog journal;

  public ResumableRun(
      ReadingOptions foreign, ForeignReporter told, Progress progress, RunLog journal) {
    this.foreign = foreign;
    this.told = told;
    this.progress = progress;
    this.journal = journal;
  }

  /** Runs, and says whether it came to its end. */
  public boolean run(Path input, NdjsonFiles files, boolean resume) {
    String asked = foreign.asked() + (files.report().isPresent() ? ", with a report" : "");
    try {
      NdjsonRun.of(foreign.intake(told), foreign.policy())
          .telling(progress::at)
          .run(input, files, asked, resume);
      return true;
    } catch (FaultException other) {
      String text = "cannot go on: " + other.faults().get(0).at("");
      journal.missing(files.records().toString(), "conflict", text);
    } catch (IOException failed) {
      journal.unfinished(input.toString(), failed);
    } catch (UncheckedIOException failed) {
      journal.unfinished(input.toString(), failed);
    }
    return false;
  }
}
