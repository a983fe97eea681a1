package org.isopter.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.isopter.mapper.foreign.NdjsonFiles;
import org.isopter.mapper.foreign.NdjsonRun;
import org.isopter.model.value.FaultException;

/** Reads one file of lines into another; such a run can be stopped and resumed. */
final class ForeignRun {

  private final ReadingOptions foreign;
  private final ForeignTold told;
  private final Progress progress;
  private final Journal journal;

  ForeignRun(ReadingOptions foreign, ForeignTold told, Progress progress, Journal journal) {
    this.foreign = foreign;
    this.told = told;
    this.progress = progress;
    this.journal = journal;
  }

  /** Runs, and says whether it came to its end. */
  boolean run(Path input, NdjsonFiles files, boolean resume) {
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
