package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A server on this machine that sends bytes as a test writes them, right or wrong, and then closes
 * the connection, or goes silent.
 */
final class RawServer implements AutoCloseable {

  /** Stands at the end of what is followed by silence. */
  static final String SILENCE = "<silence>";

  private final ServerSocket socket;
  private final List<String> answers;
  private final AtomicInteger asked = new AtomicInteger();

  private RawServer(List<String> answers) throws IOException {
    this.answers = answers;
    this.socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Thread thread = new Thread(this::serve, "raw-server");
    thread.setDaemon(true);
    thread.start();
  }

  /** Sends these, one to each connection, and the last of them from then on. */
  static RawServer answering(String... answers) {
    try {
      return new RawServer(List.of(answers));
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  private void serve() {
    while (!socket.isClosed()) {
      try {
        Socket connection = socket.accept();
        Thread thread = new Thread(() -> answer(connection), "raw-connection");
        thread.setDaemon(true);
        thread.start();
      } catch (IOException closed) {
        return;
      }
    }
  }

  private void answer(Socket connection) {
    try (connection) {
      int number = asked.getAndIncrement();
      readHead(connection.getInputStream());
      String answer = answers.get(Math.min(number, answers.size() - 1));
      OutputStream out = connection.getOutputStream();
      out.write(answer.replace(SILENCE, "").getBytes(ISO_8859_1));
      out.flush();
      if (answer.endsWith(SILENCE)) {
        // Until the client has had enough.
        connection.getInputStream().read();
      }
    } catch (IOException gone) {
      Thread.currentThread().interrupt();
    }
  }

  private static void readHead(InputStream in) throws IOException {
    StringBuilder head = new StringBuilder();
    while (!head.toString().endsWith("\r\n\r\n")) {
      int next = in.read();
      if (next < 0) {
        return;
      }
      head.append((char) next);
    }
  }

  int asked() {
    return asked.get();
  }

  ServerClient client() {
    String base = "http://127.0.0.1:" + socket.getLocalPort() + "/fhir";
    return new ServerClient(
        ServerAddress.of(base, List.of()).orThrow(),
        FakePause.HTTP,
        TokenSource.NONE,
        FakePause.QUICK,
        new FakePause());
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
