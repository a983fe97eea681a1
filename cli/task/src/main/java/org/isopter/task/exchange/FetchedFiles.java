package org.isopter.task.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.exchange.FetchedLines;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;

/** The file of what is fetched, and beside it those of what was deleted and of what went wrong. */
final class FetchedFiles implements FetchedLines, Closeable {

  private final Optional<Path> file;
  private final OutputStream lines;
  private final List<AtomicFile> open = new ArrayList<>();
  private Optional<AtomicFile> deleted = Optional.empty();
  private Optional<AtomicFile> troubles = Optional.empty();

  private FetchedFiles(Optional<Path> file, OutputStream data) {
    this.file = file;
    this.lines = file.<OutputStream>map(this::open).orElse(data);
  }

  /** Opens a file; without one, lines go to the data, and the rest is counted only. */
  static FetchedFiles of(Optional<Path> file, OutputStream data) {
    return new FetchedFiles(file, data);
  }

  /** Returns the file of what was deleted. */
  static Path deleted(Path file) {
    return file.resolveSibling(file.getFileName() + ".deleted");
  }

  /** Returns the file of what could not be given. */
  static Path troubles(Path file) {
    return file.resolveSibling(file.getFileName() + ".errors");
  }

  private AtomicFile open(Path path) {
    AtomicFile made = AtomicFile.at(path);
    open.add(made);
    return made;
  }

  @Override
  public void line(byte[] json) {
    write(json, lines);
  }

  @Override
  public void deleted(byte[] json) {
    deleted = deleted.or(() -> file.map(FetchedFiles::deleted).map(this::open));
    deleted.ifPresent(to -> write(json, to));
  }

  @Override
  public void trouble(byte[] json) {
    troubles = troubles.or(() -> file.map(FetchedFiles::troubles).map(this::open));
    troubles.ifPresent(to -> write(json, to));
  }

  private void write(byte[] json, OutputStream to) {
    try {
      FetchedLines.write(json, to);
    } catch (IOException failed) {
      throw new UnwritableException(file.map(Path::toString).orElse("standard output"), failed);
    }
  }

  /** Gives the files their names. */
  void commit() {
    open.forEach(AtomicFile::commit);
  }

  @Override
  public void close() throws IOException {
    for (AtomicFile each : open) {
      each.close();
    }
  }
}
