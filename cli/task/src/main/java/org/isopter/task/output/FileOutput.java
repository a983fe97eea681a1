package org.isopter.task.output;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.Issue;

/** Puts everything into one file. */
public final class FileOutput implements Output {

  private final Path target;
  private final AtomicFile file;
  private final boolean evenEmpty;
  private boolean used;

  /**
   * Starts the file.
   *
   * @param evenEmpty whether there is to be a file also when nothing was put
   */
  public FileOutput(Path target, boolean evenEmpty) {
    this.target = target;
    this.file = AtomicFile.at(target);
    this.evenEmpty = evenEmpty;
  }

  @Override
  public Optional<Issue> put(InputDocument item, String text) {
    put(text);
    return Optional.empty();
  }

  @Override
  public void put(String text) {
    used = true;
    Utf8.write(file, target.toString(), text);
  }

  @Override
  public void commit() {
    if (used || evenEmpty) {
      file.commit();
    }
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
