package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.PrintStream;

/**
 * The streams of one run.
 *
 * @param in what {@code -} reads
 * @param out data, and nothing else
 * @param err words
 */
record Streams(InputStream in, PrintStream out, PrintStream err) {

  /** Returns those of the process, in UTF-8 whatever the platform's encoding. */
  static Streams standard() {
    return new Streams(System.in, utf8(FileDescriptor.out), utf8(FileDescriptor.err));
  }

  void flush() {
    out.flush();
    err.flush();
  }

  private static PrintStream utf8(FileDescriptor to) {
    return new PrintStream(
        new BufferedOutputStream(new FileOutputStream(to), 1 << 16), false, UTF_8);
  }
}
