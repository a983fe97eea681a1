package org.isopter.task.io;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The hidden files that are not complete yet. They go when the process is asked to end. */
final class Unfinished {

  private static final Set<Path> FILES = ConcurrentHashMap.newKeySet();

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(Unfinished::deleteAll, "unfinished-files"));
  }

  private Unfinished() {}

  /** Takes note of a file that is about to be written, and returns it. */
  static Path add(Path file) {
    FILES.add(file);
    return file;
  }

  /** Gives a complete file its name in one step, so that nobody ever sees none, or half of one. */
  static void rename(Path file, Path target) throws IOException {
    try {
      Files.move(file, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException other) {
      Files.move(file, target, StandardCopyOption.REPLACE_EXISTING);
    }
    FILES.remove(file);
  }

  /** Deletes a file that will not be completed. */
  static void delete(Path file) throws IOException {
    Files.deleteIfExists(file);
    FILES.remove(file);
  }

  private static void deleteAll() {
    for (Path file : List.copyOf(FILES)) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException kept) {
        // The process ends: there is nobody left to tell.
        FILES.remove(file);
      }
    }
  }
}
