package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.net.SocketFactory;

/** Sends the message of the documentation to whoever listens on this machine. */
final class MllpSender {

  private static final int TRIES = 600;
  private static final int PAUSE_MS = 50;
  private static final int END = 0x1c;

  private MllpSender() {}

  static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  static String message(String id) throws IOException {
    return Files.readString(Path.of("docs", "results.hl7"))
        .replace("|m-1|", "|" + id + "|")
        .replace('\n', '\r');
  }

  /** Sends a message as soon as someone listens, and returns the answer. */
  static String send(int port, String message) throws IOException, InterruptedException {
    return send(SocketFactory.getDefault(), port, message);
  }

  static String send(SocketFactory sockets, int port, String message)
      throws IOException, InterruptedException {
    for (int i = 0; i < TRIES; i++) {
      try (Socket socket = sockets.createSocket(InetAddress.getLoopbackAddress(), port)) {
        socket.setSoTimeout(TRIES * PAUSE_MS);
        socket.getOutputStream().write(("\u000b" + message + "\u001c\r").getBytes(UTF_8));
        socket.getOutputStream().flush();
        return answer(socket.getInputStream());
      } catch (ConnectException nobody) {
        Thread.sleep(PAUSE_MS);
      }
    }
    throw new IOException("nobody listens");
  }

  private static String answer(InputStream in) throws IOException {
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    for (int next = in.read(); next >= 0 && next != END; next = in.read()) {
      answer.write(next);
    }
    return answer.toString(UTF_8);
  }
}
