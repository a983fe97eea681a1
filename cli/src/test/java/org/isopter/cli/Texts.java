package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The texts of files, for use within streams. */
final class Texts {

  private Texts() {}

  static String of(Path file) {
    try {
      return Files.readString(file, UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
