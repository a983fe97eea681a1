package org.isopter.mapper.foreign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Records that other systems published; they lie beside the repository and are no part of it. */
public final class Foreign {

  private Foreign() {}

  /**
   * Returns the folder: the one that is named, or the one beside the repository, if it is there.
   */
  public static Optional<Path> folder() {
    Stream<Path> beside =
        Stream.of("..", "../..").map(up -> Path.of(up, "shared", "foreign").normalize());
    Stream<Path> given = Stream.ofNullable(System.getProperty("foreign.records")).map(Path::of);
    return Stream.concat(given, beside).filter(Files::isDirectory).findFirst();
  }

  /** Returns every JSON file of the folder. */
  public static List<Path> jsonFiles() {
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
