package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import org.junit.jupiter.api.Test;

class MainTest {

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(new PrintStream(out, true, UTF_8), new PrintStream(err, true, UTF_8), args);
  }

  @Test
  void helpGoesToStandardOutput() {
    assertEquals(0, run("--help"));
    assertTrue(out.toString(UTF_8).contains("Usage: isopter"), out.toString(UTF_8));
    assertEquals("", err.toString(UTF_8));
  }

  @Test
  void noArgumentsShowsTheUsage() {
    assertEquals(0, run());
    assertTrue(out.toString(UTF_8).contains("Usage: isopter"), out.toString(UTF_8));
  }

  @Test
  void versionNamesTheCommand() {
    assertEquals(0, run("--version"));
    assertTrue(out.toString(UTF_8).startsWith("isopter "), out.toString(UTF_8));
  }

  @Test
  void anUnknownOptionIsAUsageError() {
    assertEquals(2, run("--no-such-option"));
    assertTrue(err.toString(UTF_8).contains("--no-such-option"), err.toString(UTF_8));
    assertEquals("", out.toString(UTF_8));
  }
}
