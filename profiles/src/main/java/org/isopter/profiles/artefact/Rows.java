package org.isopter.profiles.artefact;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;

/** The rows of a table beside the classes: cells apart by tabs, the first row naming them. */
final class Rows {

  private static final Pattern TAB = Pattern.compile("\t");

  private Rows() {}

  static List<List<String>> read(String name) {
    try (InputStream in = Rows.class.getResourceAsStream(name)) {
      String all = new String(Objects.requireNonNull(in, name).readAllBytes(), UTF_8);
      return all.lines().skip(1).map(line -> TAB.splitAsStream(line).toList()).toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
