package org.isopter.task.convert;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.mapper.foreign.run.CarriedFile;
import org.isopter.mapper.foreign.run.NdjsonFiles;
import org.isopter.mapper.foreign.run.NdjsonRun;
import org.isopter.model.value.FaultException;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;

/** Reads one file of lines into another; such a run can be stopped and resumed. */
final class ResumableRun {

  private final FromFhirRequest request;
  private final ForeignReporter reporter;
  private final Progress progress;
  private final RunLog log;

  ResumableRun(FromFhirRequest request, ForeignReporter reporter, Progress progress, RunLog log) {
    this.request = request;
    this.reporter = reporter;
    this.progress = progress;
    this.log = log;
  }

  /** Runs, and returns where the records are; empty when it did not come to its end. */
  String run(String input) {
    Path target = request.target().path().orElseThrow();
    Path carried = request.carried().orElseGet(() -> CarriedFile.beside(target));
    boolean whole = run(Path.of(input), new NdjsonFiles(target, carried, request.report()));
    if (whole && reporter.counts().isEmpty()) {
      log.say(
          input + (request.resume() ? " holds no further line" : " is empty") + ": nothing to do");
    }
    String left = Files.exists(carried) ? "; what was left over is in " + carried : "";
    return whole ? " written as ndjson to " + target + left : "";
  }

  private boolean run(Path input, NdjsonFiles files) {
    ReadingOptions reading = request.reading();
    String asked = reading.asked() + (files.report().isPresent() ? ", with a report" : "");
    try {
      NdjsonRun.of(reading.intake(reporter), reading.policy())
          .telling(progress::at)
          .run(input, files, asked, request.resume());
      return true;
    } catch (FaultException other) {
      String text = "cannot go on: " + other.faults().get(0).at("");
      log.missing(files.records().toString(), "conflict", text);
    } catch (IOException failed) {
      log.unfinished(input.toString(), failed);
    } catch (UncheckedIOException failed) {
      log.unfinished(input.toString(), failed);
    }
    return false;
  }
}
