package org.isopter.task.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import org.isopter.mapper.io.UnwritableException;

/**
 * The streams of one run.
 *
 * @param in what {@code -} reads
 * @param out data, and nothing else
 * @param err words
 * @param terminal whether someone watches the words as they come
 */
public record Streams(InputStream in, PrintStream out, PrintStream err, boolean terminal) {

  /** Makes streams that nobody watches. */
  public Streams(InputStream in, PrintStream out, PrintStream err) {
    this(in, out, err, false);
  }

  /** Returns those of the process, in UTF-8 whatever the platform's encoding. */
  public static Streams standard() {
    // Java cannot tell it of standard error: the script that starts it can.
    boolean terminal = Boolean.getBoolean("isopter.terminal");
    return new Streams(
        System.in,
        utf8(new LoudOutput(new FileOutputStream(FileDescriptor.out), "standard output")),
        utf8(new FileOutputStream(FileDescriptor.err)),
        terminal);
  }

  /**
   * Writes what still waits.
   *
   * @throws UnwritableException when the data cannot be written
   */
  public void flush() {
    out.flush();
    err.flush();
  }

  private static PrintStream utf8(OutputStream to) {
    return new PrintStream(new BufferedOutputStream(to, 1 << 16), false, UTF_8);
  }
}
