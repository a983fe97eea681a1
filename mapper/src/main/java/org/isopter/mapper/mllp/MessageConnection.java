package org.isopter.mapper.mllp;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import org.isopter.mapper.v2.V2Fault;
import org.isopter.mapper.v2.V2Header;

/** One connection: message after message, each answered before the next is read. */
final class MessageConnection {

  /** How long the sender of what is refused may take to read the answer. */
  private static final Duration LAST_WORDS = Duration.ofSeconds(2);

  private final Socket socket;
  private final ListenerOptions options;
  private final Inbox inbox;
  private final ListenerEvents events;
  private final ScheduledExecutorService watch;
  private final ReentrantLock answering = new ReentrantLock();
  private volatile boolean stopped;

  MessageConnection(
      Socket socket,
      ListenerOptions options,
      Inbox inbox,
      ListenerEvents events,
      ScheduledExecutorService watch) {
    this.socket = socket;
    this.options = options;
    this.inbox = inbox;
    this.events = events;
    this.watch = watch;
  }

  /** Answers messages until the other side ends, breaks the rules, or is silent for too long. */
  void run() {
    try (socket) {
      socket.setTcpNoDelay(true);
      Frames frames = new Frames(socket, options.longest(), options.idle());
      boolean open = true;
      while (open) {
        open = take(frames.next());
      }
      if (!socket.isOutputShutdown()) {
        socket.shutdownOutput();
      }
      frames.drain(LAST_WORDS);
    } catch (IOException broken) {
      // Whoever has no answer sends the message again: nothing that was acknowledged is lost.
      if (!stopped) {
        events.refused(sender(), "the connection broke");
      }
    }
  }

  private boolean take(Frame frame) throws IOException {
    Optional<V2Header> header = V2Header.of(frame.bytes());
    switch (frame.kind()) {
      case MESSAGE -> answer(() -> Receipt.of(frame.bytes(), inbox));
      case UNENDED ->
          answer(
              () ->
                  Receipt.rejected(
                      header, V2Fault.Code.SEQUENCE, "an end mark and a carriage return"));
      case TOO_LONG ->
          answer(
              () ->
                  Receipt.rejected(
                      header,
                      V2Fault.Code.INTERNAL,
                      "a message of at most " + options.longest() + " bytes"));
      case CUT -> events.refused(sender(), "a message that was cut off, which is not kept");
      case NO_MESSAGE -> events.refused(sender(), "something that is no message over MLLP");
      case END -> {}
    }
    return frame.kind() == Frame.Kind.MESSAGE;
  }

  /** What makes a receipt. */
  private interface Receiving {
    Receipt receipt();
  }

  private void answer(Receiving receiving) throws IOException {
    answering.lock();
    try {
      if (stopped) {
        return;
      }
      Receipt receipt = receiving.receipt();
      send(receipt);
      receipt
          .kept()
          .ifPresentOrElse(
              kept -> events.kept(kept.file(), kept.state() == KeptMessage.State.BEFORE),
              () -> events.refused(sender(), why(receipt)));
    } finally {
      answering.unlock();
    }
  }

  private static String why(Receipt receipt) {
    return receipt.answer().code()
        + receipt
            .answer()
            .fault()
            .map(fault -> " " + fault.code().number() + ", " + fault.text())
            .orElse("");
  }

  /** Whoever does not read the answer would hold the connection for ever. */
  private void send(Receipt receipt) throws IOException {
    if (watch.isShutdown()) {
      throw new SocketException("nobody waits any longer");
    }
    ScheduledFuture<?> patience =
        watch.schedule(this::closeSocket, options.idle().toMillis(), TimeUnit.MILLISECONDS);
    try {
      ByteArrayOutputStream framed = new ByteArrayOutputStream();
      framed.write(Frames.START);
      framed.writeBytes(receipt.answer().text(OffsetDateTime.now(ZoneOffset.UTC)).getBytes(UTF_8));
      framed.write(Frames.END);
      framed.write(Frames.CARRIAGE_RETURN);
      socket.getOutputStream().write(framed.toByteArray());
      socket.getOutputStream().flush();
    } finally {
      patience.cancel(false);
    }
  }

  private String sender() {
    return String.valueOf(socket.getInetAddress()).replaceFirst("^[^/]*/", "");
  }

  /** Asks this connection to end: no further message is answered. */
  void stop() {
    stopped = true;
  }

  /**
   * Ends this connection once what is being kept is answered, or the patience is over.
   *
   * @param until when, as {@link System#nanoTime()} counts
   */
  void end(long until) {
    boolean quiet = false;
    try {
      quiet = answering.tryLock(until - System.nanoTime(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
    closeSocket();
    if (quiet) {
      answering.unlock();
    }
  }

  private void closeSocket() {
    try {
      socket.close();
    } catch (IOException gone) {
      events.refused(sender(), "the connection broke");
    }
  }
}
