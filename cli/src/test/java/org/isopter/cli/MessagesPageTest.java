package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import javax.net.SocketFactory;
import javax.net.ssl.SSLContext;
import org.isopter.mapper.http.TrustedCa;
import org.isopter.mapper.io.Passing;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Messages out, in and over the network, as their page shows it. */
@Timeout(120)
class MessagesPageTest {

  private static final Path PAGE = Path.of("docs", "messages.md");
  private static final String SHOWN = "2575";
  private static final String PASSWORD = "for-this-test-alone";

  @TempDir Path folder;

  @Test
  void showsWhatItsCommandsPrint() throws Exception {
    Passing.delete(Path.of("target", "received"));
    List<Console.Shown> commands = Console.of(PAGE);
    assertTrue(commands.size() >= 5);
    for (Console.Shown shown : commands) {
      if (shown.command().contains(" listen ")) {
        String port = String.valueOf(MllpSender.freePort());
        CompletableFuture<String> answer = sent(Integer.parseInt(port), "m-1");
        PagesTest.check(
            new Console.Shown(
                shown.page(),
                shown.number(),
                shown.command().replace(SHOWN, port),
                shown.shown().stream().map(line -> line.replace(SHOWN, port)).toList()));
        assertTrue(answer.get().contains("MSA|AA|m-1"), answer.get());
      } else {
        PagesTest.check(shown);
      }
    }
  }

  private static CompletableFuture<String> sent(int port, String id) {
    return CompletableFuture.supplyAsync(
        () -> {
          try {
            return MllpSender.send(port, MllpSender.message(id));
          } catch (IOException | InterruptedException failed) {
            return failed.toString();
          }
        });
  }

  @Test
  void refusesOptionsThatDoNotFit() throws IOException {
    Path empty = Files.writeString(folder.resolve("empty.p12"), "");
    Path password = Files.writeString(folder.resolve("password"), PASSWORD);
    String out = folder.resolve("out").toString();
    List<List<String>> wrong =
        List.of(
            List.of("--port", "70000"),
            List.of("--port", "0", "--address", "0.0.0.0"),
            List.of("--port", "0", "--address", "no.such.host.example"),
            List.of("--port", "0", "--message-size", "0"),
            List.of("--port", "0", "--connections", "0"),
            List.of("--port", "0", "--stop-after", "-1"),
            List.of("--port", "0", "--key-store", empty + ""),
            List.of("--port", "0", "--key-store", empty + "", "--key-store-password", out),
            List.of(
                "--port", "0", "--key-store", empty + "", "--key-store-password", password + ""));
    for (List<String> options : wrong) {
      List<String> all = new java.util.ArrayList<>(List.of("listen", "--output", out));
      all.addAll(options);
      Run run = Run.of(all.toArray(String[]::new));
      assertEquals(ExitStatus.USAGE, run.status(), () -> options + run.err());
      assertFalse(run.err().contains(PASSWORD));
    }
    assertFalse(Files.exists(Path.of(out)));
  }

  private void keytool(String... arguments) throws IOException, InterruptedException {
    List<String> command = new java.util.ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
    command.addAll(List.of(arguments));
    command.addAll(List.of("-storetype", "PKCS12", "-storepass", PASSWORD));
    command.addAll(List.of("-keystore", folder.resolve("receiver.p12").toString()));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertEquals(0, process.waitFor(), said);
  }

  private SSLContext receiver(Path certificate) throws IOException, InterruptedException {
    keytool(
        "-genkeypair",
        "-alias",
        "r",
        "-keyalg",
        "EC",
        "-dname",
        "CN=127.0.0.1",
        "-ext",
        "san=ip:127.0.0.1");
    keytool("-exportcert", "-rfc", "-alias", "r", "-file", certificate.toString());
    return TrustedCa.of(certificate);
  }

  /** Receives one message with the key of the receiver. */
  private CompletableFuture<Run> receiveOne(int port, Path out, Path password, String... more) {
    Stream<String> all =
        Stream.of(
            "listen",
            "--port",
            port + "",
            "--output",
            out + "",
            "--stop-after",
            "1",
            "--key-store",
            folder.resolve("receiver.p12") + "",
            "--key-store-password",
            password + "");
    String[] words = Stream.concat(all, Stream.of(more)).toArray(String[]::new);
    return CompletableFuture.supplyAsync(() -> Run.of(words));
  }

  @Test
  void encryptsWithTheKeyOfAFile() throws Exception {
    Path certificate = folder.resolve("receiver.pem");
    SocketFactory trusting = receiver(certificate).getSocketFactory();
    Path password = Files.writeString(folder.resolve("password"), PASSWORD + "\n");
    int port = MllpSender.freePort();
    Path out = folder.resolve("out");
    CompletableFuture<Run> run = receiveOne(port, out, password);
    String answer = MllpSender.send(trusting, port, MllpSender.message("tls"));
    assertTrue(answer.contains("MSA|AA|tls"), answer);
    assertTrue(run.get().ok().err().contains("1 message received"));
    assertFalse(run.get().err().contains(PASSWORD));
  }

  @Test
  void letsInOnlyThoseWhomACertificateVouchesFor() throws Exception {
    Path certificate = folder.resolve("receiver.pem");
    SocketFactory nobody = receiver(certificate).getSocketFactory();
    Path password = Files.writeString(folder.resolve("password"), PASSWORD);
    int port = MllpSender.freePort();
    Path out = folder.resolve("out");
    SSLContext known =
        org.isopter.mapper.mllp.ReceiverKey.of(
            folder.resolve("receiver.p12"),
            PASSWORD.toCharArray(),
            java.util.Optional.of(certificate));
    CompletableFuture<Run> run = receiveOne(port, out, password, "--senders", certificate + "");
    assertThrows(
        IOException.class,
        () -> {
          String answer = MllpSender.send(nobody, port, MllpSender.message("stranger"));
          throw new IOException(answer.isEmpty() ? "hung up" : "answered " + answer);
        });
    String answer = MllpSender.send(known.getSocketFactory(), port, MllpSender.message("known"));
    assertTrue(answer.contains("MSA|AA|known"), answer);
    assertEquals(1, run.get().ok().out().lines().count());
  }

  @Test
  void saysThatSomebodyListensThereAlready() throws Exception {
    try (java.net.ServerSocket taken =
        new java.net.ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
      Run run =
          Run.of(
              "listen", "--port", taken.getLocalPort() + "", "--output", folder.resolve("o") + "");
      assertEquals(ExitStatus.USAGE, run.status());
      assertTrue(run.err().contains("or someone does"), run.err());
    }
  }
}
