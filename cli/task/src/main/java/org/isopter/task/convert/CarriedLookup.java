package org.isopter.task.convert;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.run.CarriedFile;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;

/** Looks up what is carried along with each record, in its own file or in the one that is named. */
public final class CarriedLookup implements AutoCloseable {

  private final @Nullable Path named;
  private final RunLog log;
  private @Nullable Path open;
  private @Nullable CarriedFile file;

  /**
   * Makes a finder.
   *
   * @param named the one file for all records; none where each file of records has its own
   */
  public CarriedLookup(@Nullable Path named, RunLog log) {
    this.named = named;
    this.log = log;
  }

  /** Says whether one file holds what goes along with the records of all sources. */
  boolean isOneForAll() {
    return named != null;
  }

  /** Returns the file for a source; empty where there is none. */
  Optional<Path> of(InputSource source) {
    if (named != null) {
      return Optional.of(named);
    }
    if (source.form() == InputForm.CARRIED) {
      return source.file();
    }
    return source.file().map(CarriedFile::beside).filter(Files::isRegularFile);
  }

  /** Returns what goes along with a record of a source. */
  Carried with(InputDocument item, Exam exam) {
    Optional<CarriedFile> there = opened(item.source());
    if (there.isEmpty()) {
      return Carried.NOTHING;
    }
    Carried carried = there.get().take(exam.header().id());
    List<String> homeless = ForeignWriter.homeless(exam, carried);
    if (!homeless.isEmpty()) {
      warn(
          item.position(),
          "carried entries of " + homeless + " left out: the record has no such fact");
    }
    return carried;
  }

  /** Returns the next of what goes along without a record; empty when that was all. */
  Optional<Carried> rest(InputSource source) {
    return opened(source).flatMap(CarriedFile::takeRest);
  }

  /** Tells of what no record of a source asked for, once its records are done. */
  void tellLeft(InputSource source) {
    long left = opened(source).map(CarriedFile::left).orElse(0L);
    if (left > 0) {
      Position at = new Position(String.valueOf(open), 0, 0);
      String entries = left == 1 ? "1 carried entry" : left + " carried entries";
      warn(at, entries + " left out: no record that was read has that identifier");
    }
  }

  private Optional<CarriedFile> opened(InputSource source) {
    Optional<Path> path = of(source);
    if (path.isPresent() && !path.get().equals(open)) {
      close();
      open = path.get();
      file = open(path.get());
    }
    return path.isPresent() ? Optional.ofNullable(file) : Optional.empty();
  }

  private @Nullable CarriedFile open(Path path) {
    try {
      return CarriedFile.open(path);
    } catch (FaultException strange) {
      String where = strange.faults().get(0).path();
      log.missing(where, "invalid", "saw " + strange.faults().get(0).at("").seen());
    } catch (IOException failed) {
      log.missing(path.toString(), "not-found", FailureText.of(failed));
    }
    return null;
  }

  private void warn(Position at, String text) {
    log.warn(at, List.of(Issue.of(Issue.Severity.WARNING, "not-supported", at, text)));
  }

  @Override
  public void close() {
    try {
      if (file != null) {
        file.close();
      }
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
    file = null;
    open = null;
  }
}
