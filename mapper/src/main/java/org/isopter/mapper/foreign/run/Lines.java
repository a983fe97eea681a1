package org.isopter.mapper.foreign.run;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import org.isopter.mapper.io.Inflated;

/** The lines of a stream, compressed or not; a line that is too long is cut and says so. */
final class Lines implements Closeable {

  private static final int GZIP_FIRST = 0x1f;
  private static final int GZIP_SECOND = 0x8b;

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
  record Line(long number, byte[] bytes, boolean tooLong) {

    /** Says whether nothing was written; zero bytes are what a failing disk leaves. */
    boolean isBlank() {
      for (byte each : bytes) {
        if (" \t\r\n".indexOf(each) < 0) {
          return false;
        }
      }
      return true;
    }
  }

  Lines(InputStream raw, long longest) throws IOException {
    BufferedInputStream buffered = new BufferedInputStream(raw, 1 << 16);
    buffered.mark(2);
    boolean gzip = buffered.read() == GZIP_FIRST && buffered.read() == GZIP_SECOND;
    buffered.reset();
    this.in = gzip ? Inflated.of(buffered) : buffered;
    this.longest = longest;
  }

  /** Returns the next line; empty at the end. */
  Optional<Line> next() throws IOException {
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
