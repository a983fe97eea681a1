package org.isopter.mapper.io;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/**
 * The lines of a stream, one held at a time; a line that is too long is cut there and says so. A
 * line feed at the end starts no further line.
 */
public final class Lines implements Closeable {

  private final InputStream in;
  private final long longest;
  private final byte[] buffer = new byte[1 << 16];
  private int at;
  private int filled;
  private long number;

  /**
   * One line.
   *
   * @param number its number, from 1
   * @param bytes the line without its end; of one that is too long the beginning
   * @param tooLong whether it was longer than allowed
   */
  @SuppressWarnings("ArrayRecordComponent") // Handed on once, never compared.
  public record Line(long number, byte[] bytes, boolean tooLong) {

    /** Says whether nothing was written; zero bytes are what a failing disk leaves. */
    public boolean isBlank() {
      return Lines.isBlank(bytes, 0, bytes.length);
    }
  }

  /**
   * Makes a reader of lines.
   *
   * @param in the bytes
   * @param longest the most bytes of a line that are kept
   */
  public Lines(InputStream in, long longest) {
    this.in = in;
    this.longest = longest;
  }

  /** Says whether bytes hold nothing but spaces, tabs and ends of lines. */
  public static boolean isBlank(byte[] bytes, int from, int length) {
    for (int i = from; i < from + length; i++) {
      if (" \t\r\n".indexOf(bytes[i]) < 0) {
        return false;
      }
    }
    return true;
  }

  /**
   * Returns the next line; empty at the end.
   *
   * @throws IOException when the text cannot be read
   */
  public Optional<Line> next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(2048);
    boolean tooLong = false;
    boolean any = false;
    while (at < filled || fill()) {
      any = true;
      int end = endOfLine();
      long room = longest - line.size();
      int length = (int) Math.min(end - at, room);
      line.write(buffer, at, length);
      tooLong |= length < end - at;
      at = end;
      if (at < filled) {
        at++;
        break;
      }
    }
    if (!any) {
      return Optional.empty();
    }
    number++;
    return Optional.of(new Line(number, line.toByteArray(), tooLong));
  }

  private int endOfLine() {
    int end = at;
    while (end < filled && buffer[end] != '\n') {
      end++;
    }
    return end;
  }

  private boolean fill() throws IOException {
    at = 0;
    filled = Math.max(0, in.read(buffer));
    return filled > 0;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
