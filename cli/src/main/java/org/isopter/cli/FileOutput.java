package org.isopter.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Puts everything into one file. */
final class FileOutput implements Output {

  private final Path target;
  private final SafeFile file;
  private final boolean evenEmpty;
  private boolean used;

  /**
   * Starts the file.
   *
   * @param evenEmpty whether there is to be a file also when nothing was put
   */
  FileOutput(Path target, boolean evenEmpty) {
    this.target = target;
    this.file = SafeFile.at(target);
    this.evenEmpty = evenEmpty;
  }

  @Override
  public Optional<Issue> put(Item item, String text) {
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
