package org.isopter.mapper.mllp;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;

/** Sends bytes to a listener on this machine and reads its answers. */
final class TestSender implements Closeable {

  private static final int PATIENCE_MS = 10_000;

  private final Socket socket;

  TestSender(Socket socket) throws IOException {
    this.socket = socket;
    socket.setSoTimeout(PATIENCE_MS);
  }

  static TestSender to(int port) throws IOException {
    return new TestSender(new Socket(InetAddress.getLoopbackAddress(), port));
  }

  static String framed(String message) {
    return "\u000b" + message + "\u001c\r";
  }

  void send(String bytes) throws IOException {
    socket.getOutputStream().write(bytes.getBytes(UTF_8));
    socket.getOutputStream().flush();
  }

  void sendByte(byte one) throws IOException {
    socket.getOutputStream().write(one);
    socket.getOutputStream().flush();
  }

  /** Ends the sending, so that the listener sees the end. */
  void end() throws IOException {
    socket.shutdownOutput();
  }

  /** Returns the next answer without its frame; what came before the end where there is none. */
  String answer() throws IOException {
    InputStream in = socket.getInputStream();
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    int next = in.read();
    while (next >= 0 && next != Frames.END) {
      if (answer.size() > 0 || (next != Frames.START && next != Frames.CARRIAGE_RETURN)) {
        answer.write(next);
      }
      next = in.read();
    }
    return answer.toString(UTF_8).strip();
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
