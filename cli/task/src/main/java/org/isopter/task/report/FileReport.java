package org.isopter.task.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Utf8;

/** A file of OperationOutcomes, a line for each document that there is something to tell of. */
public final class FileReport implements IssueSink, AutoCloseable {

  private final Path target;
  private final AtomicFile file;
  private final OutcomeLines lines;

  public FileReport(Path target) {
    this.target = target;
    this.file = AtomicFile.at(target);
    this.lines = new OutcomeLines(file);
  }

  /**
   * Runs something that reports, and gives the file its name once that is done.
   *
   * @param target the file; empty for no report
   * @return what the run returned
   */
  public static int with(Optional<Path> target, ToIntFunction<IssueSink> run) {
    if (target.isEmpty()) {
      return run.applyAsInt(IssueSink.NOBODY);
    }
    try (FileReport file = new FileReport(target.get())) {
      int status = run.applyAsInt(file);
      file.commit();
      return status;
    }
  }

  @Override
  public void put(Position document, List<Issue> issues) {
    if (!issues.isEmpty()) {
      lines.put(document, issues);
    }
  }

  @Override
  public void outcome(String line) {
    Utf8.write(file, target.toString(), line + "\n");
  }

  /** Gives the report its name. */
  public void commit() {
    file.commit();
  }

  @Override
  public void close() {
    try {
      file.close();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }
}
