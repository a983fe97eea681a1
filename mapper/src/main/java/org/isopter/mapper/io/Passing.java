package org.isopter.mapper.io;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Files and folders that are gone when the process ends, also where it is asked to end (SIGTERM)
 * before its work is done. One that is killed at once leaves them.
 */
public final class Passing {

  /** What works on a folder goes on while it is deleted, and may put a file into it once more. */
  private static final int TRIES = 20;

  private static final Set<Path> PATHS = ConcurrentHashMap.newKeySet();

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(Passing::deleteAll, "passing-files"));
  }

  private Passing() {}

  /** Takes note of a file or folder that is about to be made, and returns it. */
  public static Path add(Path path) {
    PATHS.add(path);
    return path;
  }

  /**
   * Gives a complete file or folder its name in one step, so that nobody ever sees none, or half of
   * one; it stays when the process ends.
   *
   * @param target the name; a file that has it is replaced
   * @throws IOException when that cannot be done
   */
  public static void rename(Path path, Path target) throws IOException {
    try {
      Files.move(path, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException other) {
      Files.move(path, target, StandardCopyOption.REPLACE_EXISTING);
    }
    PATHS.remove(path);
  }

  /**
   * Deletes a file, or a folder with all that is in it; nothing where nothing is there.
   *
   * @throws IOException when a file of it cannot be deleted
   */
  public static void delete(Path path) throws IOException {
    if (Files.exists(path)) {
      List<Path> all;
      try (Stream<Path> inside = Files.walk(path)) {
        all = inside.sorted(Comparator.reverseOrder()).toList();
      }
      for (Path one : all) {
        Files.deleteIfExists(one);
      }
    }
    PATHS.remove(path);
  }

  private static void deleteAll() {
    for (int i = 0; i < TRIES && !PATHS.isEmpty(); i++) {
      for (Path path : List.copyOf(PATHS)) {
        try {
          delete(path);
        } catch (IOException | java.io.UncheckedIOException busy) {
          // Tried again: the process ends, and there is nobody left to tell.
          Thread.onSpinWait();
        }
      }
    }
  }
}
