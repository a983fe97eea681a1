package org.isopter.mapper.pool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** A folder that appears under its name only when everything in it is complete. */
final class PoolFolder implements AutoCloseable {

  private final Path target;
  private final Path aside;

  private PoolFolder(Path target, Path aside) {
    this.target = target;
    this.aside = aside;
  }

  /**
   * Starts a folder beside its target.
   *
   * @throws FaultException when something is in the target already
   */
  static PoolFolder begin(Path folder) throws IOException {
    Path target = folder.toAbsolutePath().normalize();
    if (Files.exists(target) && !isEmpty(target)) {
      throw new FaultException(
          new Fault(
              folder.toString(),
              "something that is there already",
              "a new or empty folder",
              "name another folder, or take this one away first"));
    }
    Path aside = target.resolveSibling("." + target.getFileName() + ".part");
    // What an interrupted run left is no part of this one.
    delete(aside);
    Files.createDirectories(aside);
    return new PoolFolder(target, aside);
  }

  Path file(String name) {
    return aside.resolve(name);
  }

  void commit() throws IOException {
    Files.deleteIfExists(target);
    Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
  }

  @Override
  public void close() throws IOException {
    delete(aside);
  }

  private static boolean isEmpty(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      List<Path> all;
      try (Stream<Path> inside = Files.walk(folder)) {
        all = inside.sorted(Comparator.reverseOrder()).toList();
      }
      for (Path path : all) {
        Files.delete(path);
      }
    }
  }
}
