package org.isopter.task.io;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Reads bytes line by line, holding one line at a time. */
public final class BoundedLines {

  private static final int END = -1;

  private final InputStream in;
  private final int longest;
  private final byte[] buffer = new byte[1 << 16];
  private int filled;
  private int next;
  private boolean over;

  /**
   * Makes a reader.
   *
   * @param in the bytes
   * @param longest the most bytes of a line that are kept; a longer line is cut there
   */
  public BoundedLines(InputStream in, int longest) {
    this.in = in;
    this.longest = longest;
  }

  /** Returns the next line without its line feed; nothing at the end. */
  public Optional<byte[]> line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(1 << 12);
    while (!over) {
      if (next == filled && !fill()) {
        return line.size() == 0 ? Optional.empty() : Optional.of(line.toByteArray());
      }
      if (takeToLineFeed(line)) {
        return Optional.of(line.toByteArray());
      }
    }
    return Optional.empty();
  }

  private boolean fill() throws IOException {
    filled = in.read(buffer);
    next = 0;
    over = filled == END;
    return !over;
  }

  private boolean takeToLineFeed(ByteArrayOutputStream line) {
    int end = next;
    while (end < filled && buffer[end] != '\n') {
      end++;
    }
    line.write(buffer, next, Math.min(end - next, longest - line.size()));
    boolean found = end < filled;
    next = found ? end + 1 : end;
    return found;
  }
}
