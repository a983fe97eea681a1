package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;

/**
 * What one run of the command gave.
 *
 * @param status the exit status
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
record Run(int status, String out, String err) {

  /** The demo, seen from the root of the project, in which the tests run. */
  static final Path DEMO = Path.of("docs", "demo");

  static Run of(String... args) {
    return with("", args);
  }

  /** Runs with a text on standard input. */
  static Run with(String in, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status =
        Main.run(
            new Streams(
                new ByteArrayInputStream(in.getBytes(UTF_8)),
                new PrintStream(out, false, UTF_8),
                new PrintStream(err, false, UTF_8)),
            args);
    return new Run(status, out.toString(UTF_8), err.toString(UTF_8));
  }

  /** Returns this run after making sure that all went well. */
  Run ok() {
    assertEquals(ExitStatus.OK, status, this::toString);
    return this;
  }

  /** Returns the examinations of the demo. */
  static List<Path> demo() {
    try (Stream<Path> files = Files.list(DEMO)) {
      return files.filter(file -> !file.toString().endsWith(".md")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
