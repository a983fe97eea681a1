package org.isopter.mapper.mllp;

import java.io.Closeable;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import javax.net.ssl.SSLServerSocket;
import org.jspecify.annotations.Nullable;

/**
 * Receives messages with results over MLLP. A message is acknowledged with {@code AA} only when it
 * is on the disk; that it can be read says nothing of what its values mean, which is for the reader
 * of the folder.
 */
public final class MessageListener implements Closeable {

  /** How long the messages that are being kept may take when the listener is closed. */
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  /** How long to wait where a connection cannot be accepted. */
  private static final long BREATH_MS = 100;

  private final ListenerOptions options;
  private final Inbox inbox;
  private final ListenerEvents events;
  private final ServerSocket server;
  private final Set<MessageConnection> open = ConcurrentHashMap.newKeySet();
  private final ExecutorService workers = Executors.newCachedThreadPool(MessageListener::thread);
  private final ScheduledExecutorService watch =
      Executors.newSingleThreadScheduledExecutor(MessageListener::thread);
  private final AtomicBoolean closing = new AtomicBoolean();
  private final CountDownLatch closed = new CountDownLatch(1);
  private final AtomicReference<@Nullable RuntimeException> failure = new AtomicReference<>();

  private MessageListener(
      ListenerOptions options, Inbox inbox, ListenerEvents events, ServerSocket server) {
    this.options = options;
    this.inbox = inbox;
    this.events = events;
    this.server = server;
  }

  /**
   * Starts to receive, on threads of its own.
   *
   * @throws IOException when nobody can listen at the address
   */
  public static MessageListener start(
      ListenerOptions options, MessageFolder folder, ListenerEvents events) throws IOException {
    return startWith(options, folder.inbox(), events);
  }

  static MessageListener startWith(ListenerOptions options, Inbox inbox, ListenerEvents events)
      throws IOException {
    ServerSocket server = socket(options);
    try {
      server.bind(options.address(), options.connections());
    } catch (IOException taken) {
      server.close();
      throw taken;
    }
    MessageListener listener = new MessageListener(options, inbox, new InTurn(events), server);
    listener.workers.execute(listener::accept);
    return listener;
  }

  private static ServerSocket socket(ListenerOptions options) throws IOException {
    if (options.tls().isEmpty()) {
      return new ServerSocket();
    }
    SSLServerSocket secure =
        (SSLServerSocket) options.tls().get().getServerSocketFactory().createServerSocket();
    secure.setNeedClientAuth(options.knownSenders());
    return secure;
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "message-listener");
    thread.setDaemon(true);
    return thread;
  }

  /** Returns the port at which it listens. */
  public int port() {
    return server.getLocalPort();
  }

  /**
   * Waits until it is closed. What an event threw closes it, and is thrown here.
   *
   * @throws InterruptedException when the thread that waits is interrupted
   */
  public void await() throws InterruptedException {
    closed.await();
    RuntimeException failed = failure.get();
    if (failed != null) {
      throw failed;
    }
  }

  private void accept() {
    while (!closing.get()) {
      try {
        take(server.accept());
      } catch (IOException refused) {
        pause();
      }
    }
  }

  /** Where files or memory are short, to try again at once would make it worse. */
  private void pause() {
    try {
      closed.await(BREATH_MS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void take(Socket socket) throws IOException {
    if (open.size() >= options.connections()) {
      socket.close();
      events.refused("a sender", "more than " + options.connections() + " connections");
      return;
    }
    MessageConnection connection = new MessageConnection(socket, options, inbox, events, watch);
    open.add(connection);
    workers.execute(() -> serve(connection));
  }

  private void serve(MessageConnection connection) {
    try {
      connection.run();
    } catch (RuntimeException mistake) {
      // Without anybody who hears of messages, or of mistakes, nothing more is taken.
      failure.set(mistake);
      if (!closing.get()) {
        watch.execute(this::close);
      }
    } finally {
      open.remove(connection);
    }
  }

  /** Stops: nothing new is taken, and what is being kept is acknowledged first. */
  @Override
  public void close() {
    if (closing.compareAndSet(false, true)) {
      try {
        server.close();
      } catch (IOException gone) {
        events.refused("a sender", "the listener broke");
      }
      List<MessageConnection> all = List.copyOf(open);
      long until = System.nanoTime() + PATIENCE.toNanos();
      all.forEach(MessageConnection::stop);
      all.forEach(connection -> connection.end(until));
      workers.shutdown();
      watch.shutdown();
      closed.countDown();
    }
  }

  /** Tells of one event at a time. */
  private record InTurn(ListenerEvents events) implements ListenerEvents {

    @Override
    public synchronized void kept(Path file, boolean before) {
      events.kept(file, before);
    }

    @Override
    public synchronized void refused(String sender, String why) {
      events.refused(sender, why);
    }
  }
}
