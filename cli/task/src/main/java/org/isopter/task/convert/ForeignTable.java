package org.isopter.task.convert;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.Counts;
import org.isopter.mapper.foreign.run.Report;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.LoudOutput;
import org.isopter.task.io.Messages;

/** Writes what became of each resource, and all counts, for people. */
public final class ForeignTable implements AutoCloseable {

  private static final String TERMINAL = "-";

  private final Optional<AtomicFile> file;
  private final Optional<PrintStream> out;

  private ForeignTable(Optional<AtomicFile> file, Optional<PrintStream> out) {
    this.file = file;
    this.out = out;
  }

  /** Makes a table in a file, on a stream where {@code -} was asked for, or none. */
  public static ForeignTable of(Optional<String> name, PrintStream words) {
    if (name.isEmpty()) {
      return new ForeignTable(Optional.empty(), Optional.empty());
    }
    String asked = name.get();
    if (asked.equals(TERMINAL)) {
      return new ForeignTable(Optional.empty(), Optional.of(words));
    }
    AtomicFile file = AtomicFile.at(Path.of(asked));
    return new ForeignTable(
        Optional.of(file), Optional.of(new PrintStream(new LoudOutput(file, asked), false, UTF_8)));
  }

  void put(Batch batch) {
    out.ifPresent(stream -> stream.print(Messages.visible(Report.table(batch))));
  }

  /** Ends the table with the counts. */
  public void commit(Counts counts) {
    out.ifPresent(stream -> stream.print(counts.text()));
    out.ifPresent(PrintStream::flush);
    file.ifPresent(AtomicFile::commit);
  }

  @Override
  public void close() {
    try {
      if (file.isPresent()) {
        file.get().close();
      }
    } catch (IOException failed) {
      throw new UnwritableException("the table", failed);
    }
  }
}
