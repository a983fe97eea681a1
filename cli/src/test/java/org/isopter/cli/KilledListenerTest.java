package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A process that receives messages, asked to end and killed. */
@Timeout(120)
class KilledListenerTest {

  /** What Java exits with after SIGTERM: 128 and the number of the signal (POSIX). */
  private static final int ASKED_TO_END = 128 + 15;

  @TempDir Path folder;

  private Process start(int port) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName(),
            "listen",
            "--port",
            String.valueOf(port),
            "--output",
            folder.resolve("in").toString())
        .redirectErrorStream(true)
        .redirectOutput(said().toFile())
        .start();
  }

  /** A process that is asked to end has its streams closed, so that its words go to a file. */
  private Path said() {
    return folder.resolve("said");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("in"))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void leavesNoPartWhenItIsAskedToEnd() throws Exception {
    int port = MllpSender.freePort();
    Process process = start(port);
    assertTrue(MllpSender.send(port, MllpSender.message("m-1")).contains("MSA|AA|m-1"));
    try (Socket half = new Socket(InetAddress.getLoopbackAddress(), port)) {
      half.getOutputStream().write("\u000bMSH|^~\\&|EYE".getBytes(UTF_8));
      process.destroy();
      assertTrue(process.waitFor(20, TimeUnit.SECONDS));
    }
    String said = Files.readString(said());
    assertEquals(ASKED_TO_END, process.exitValue(), said);
    assertTrue(said.contains("1 message received"), said);
    assertEquals(1, names().size(), names().toString());
    assertTrue(names().get(0).endsWith(".hl7"));
  }

  @Test
  void losesNothingThatItAcknowledgedWhenItIsKilled() throws Exception {
    int port = MllpSender.freePort();
    Process process = start(port);
    assertTrue(MllpSender.send(port, MllpSender.message("k")).contains("MSA|AA|k"));
    // On Unix a kill -9: the process runs nothing more.
    process.destroyForcibly().waitFor();
    Process next = start(port);
    assertTrue(MllpSender.send(port, MllpSender.message("k")).contains("MSA|AA|k"));
    next.destroy();
    assertTrue(next.waitFor(20, TimeUnit.SECONDS));
    assertEquals(1, names().size(), names().toString());
  }
}
