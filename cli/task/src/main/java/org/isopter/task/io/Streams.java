package org.isopter.task.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.util.function.Function;
import org.isopter.mapper.io.UnwritableException;

/**
 * The streams of one run.
 *
 * @param in what {@code -} reads
 * @param out data, and nothing else
 * @param err words
 * @param terminal whether someone watches the words as they come
 * @param keyboard what opens a dialogue with that someone
 */
public record Streams(
    InputStream in,
    PrintStream out,
    PrintStream err,
    boolean terminal,
    Function<Streams, Dialogue> keyboard) {

  /** Makes streams that nobody watches. */
  public Streams(InputStream in, PrintStream out, PrintStream err) {
    this(in, out, err, false);
  }

  /** Makes streams whose dialogue is one of plain lines. */
  public Streams(InputStream in, PrintStream out, PrintStream err, boolean terminal) {
    this(in, out, err, terminal, PlainDialogue::over);
  }

  /** Returns these streams with another way to open a dialogue at a terminal. */
  public Streams at(Function<Streams, Dialogue> otherKeyboard) {
    return new Streams(in, out, err, terminal, otherKeyboard);
  }

  /** Opens a dialogue with whoever types: of plain lines where nobody watches. */
  public Dialogue dialogue() {
    return terminal ? keyboard.apply(this) : PlainDialogue.over(this);
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
