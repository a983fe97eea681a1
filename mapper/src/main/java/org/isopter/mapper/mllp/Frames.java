package org.isopter.mapper.mllp;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;

/**
 * The messages of a connection, one held at a time (HL7 Transport Specification: MLLP, release 1):
 * each between a start mark and an end mark with a carriage return behind it.
 */
final class Frames {

  static final int START = 0x0b;
  static final int END = 0x1c;
  static final int CARRIAGE_RETURN = '\r';

  private static final int NOTHING = -1;
  private static final long NANOS_PER_MILLI = 1_000_000;

  private final Socket socket;
  private final InputStream in;
  private final int longest;
  private final Duration idle;
  private final byte[] buffer = new byte[1 << 13];
  private int at;
  private int filled;
  private long deadline;
  private boolean begun;

  Frames(Socket socket, int longest, Duration idle) throws IOException {
    this.socket = socket;
    this.in = socket.getInputStream();
    this.longest = longest;
    this.idle = idle;
  }

  /**
   * Waits for the next message.
   *
   * @throws IOException when the connection breaks
   */
  Frame next() throws IOException {
    startClock();
    if (!begun) {
      int first = read();
      while (first == CARRIAGE_RETURN || first == '\n') {
        first = read();
      }
      if (first != START) {
        return Frame.of(first == NOTHING ? Frame.Kind.END : Frame.Kind.NO_MESSAGE);
      }
      startClock();
    }
    begun = false;
    return message();
  }

  private Frame message() throws IOException {
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    int next = read();
    while (next != NOTHING && next != START && next != END && message.size() < longest) {
      message.write(next);
      next = read();
    }
    return new Frame(kind(next), message.toByteArray());
  }

  private Frame.Kind kind(int last) throws IOException {
    return switch (last) {
      case NOTHING -> Frame.Kind.CUT;
      case START -> {
        begun = true;
        yield Frame.Kind.UNENDED;
      }
      case END -> {
        int after = read();
        yield after == CARRIAGE_RETURN
            ? Frame.Kind.MESSAGE
            : after == NOTHING ? Frame.Kind.CUT : Frame.Kind.UNENDED;
      }
      default -> Frame.Kind.TOO_LONG;
    };
  }

  private void startClock() {
    deadline = System.nanoTime() + idle.toNanos();
  }

  private int read() throws IOException {
    return at < filled || fill() ? buffer[at++] & 0xff : NOTHING;
  }

  private boolean fill() throws IOException {
    long left = (deadline - System.nanoTime()) / NANOS_PER_MILLI;
    if (left < 1) {
      return false;
    }
    socket.setSoTimeout((int) Math.min(left, Integer.MAX_VALUE));
    try {
      at = 0;
      filled = Math.max(0, in.read(buffer));
    } catch (SocketTimeoutException silent) {
      filled = 0;
    }
    return filled > 0;
  }

  /** Reads on without keeping anything, so that the other side can read what it was answered. */
  void drain(Duration most) throws IOException {
    deadline = System.nanoTime() + most.toNanos();
    while (fill()) {
      at = filled;
    }
  }
}
