package org.isopter.mapper.foreign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Records that other systems published; they lie beside the repository and are no part of it. */
final class Foreign {

  private Foreign() {}

  /** Returns the folder, where it is there. */
  static Optional<Path> folder() {
    String given = System.getProperty("foreign.records");
    Path here = Path.of("").toAbsolutePath();
    return Stream.concat(
            Stream.ofNullable(given).map(Path::of),
            Stream.iterate(here, p -> p != null, Path::getParent)
                .map(p -> p.resolve("shared").resolve("foreign")))
        .filter(Files::isDirectory)
        .findFirst();
  }

  /** Returns every JSON file of the folder. */
  static List<Path> jsonFiles() {
    if (folder().isEmpty()) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(folder().orElseThrow())) {
      return files.filter(file -> file.toString().endsWith(".json")).sorted().toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Returns the lines of a file. */
  static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
