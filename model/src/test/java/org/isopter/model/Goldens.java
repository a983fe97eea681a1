package org.isopter.model;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reviewed files that hold what the program says; {@code -Dgolden=update} rewrites them. */
public final class Goldens {

  private Goldens() {}

  /** Checks a text against its reviewed file, byte for byte. */
  public static void check(Path file, String actual) {
    try {
      if ("update".equals(System.getProperty("golden"))) {
        Files.writeString(file, actual, UTF_8);
      }
      assertTrue(Files.exists(file), file + " is missing: review it after -Dgolden=update");
      assertEquals(Files.readString(file, UTF_8), actual, file.toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
