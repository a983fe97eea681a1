package org.isopter.task.io;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.isopter.mapper.io.Passing;

/** The hidden files that are not complete yet. They go when the process is asked to end. */
final class Unfinished {

  private Unfinished() {}

  /** Takes note of a file that is about to be written, and returns it. */
  static Path add(Path file) {
    return Passing.add(file);
  }

  /** Gives a complete file its name in one step, so that nobody ever sees none, or half of one. */
  static void rename(Path file, Path target) throws IOException {
    try {
      Files.move(file, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException other) {
      Files.move(file, target, StandardCopyOption.REPLACE_EXISTING);
    }
    Passing.remove(file);
  }

  /** Deletes a file that will not be completed. */
  static void delete(Path file) throws IOException {
    Files.deleteIfExists(file);
    Passing.remove(file);
  }
}
