package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.isopter.mapper.io.Passing;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The way to a server and back, as its page shows it, and what goes wrong on it. */
class ServerPageTest {

  private static final Path PAGE = Path.of("docs", "server.md");
  private static final String SHOWN = "127.0.0.1:8080";

  @TempDir Path folder;

  @Test
  void showsWhatItsCommandsPrint() throws IOException {
    Passing.delete(Path.of("target", "sent.ndjson"));
    Passing.delete(Path.of("target", "from-server"));
    try (LoopbackServer server = new LoopbackServer()) {
      List<Console.Shown> commands =
          Console.of(PAGE).stream().filter(shown -> !shown.command().startsWith("mvn ")).toList();
      assertTrue(commands.size() >= 6);
      for (Console.Shown shown : commands) {
        PagesTest.check(
            new Console.Shown(
                shown.page(),
                shown.number(),
                shown.command().replace(SHOWN, server.host()),
                shown.shown().stream().map(line -> line.replace(SHOWN, server.host())).toList()));
      }
    }
  }

  private String transactions() {
    String file = folder.resolve("all.ndjson").toString();
    Run.of("to-fhir", "docs/demo", "--as", "transaction", "--output", file).ok();
    return file;
  }

  @Test
  void saysThatNobodyListensAndLeavesTheRestUntried() throws IOException {
    String address;
    try (LoopbackServer server = new LoopbackServer()) {
      address = "http://" + server.host() + "/fhir";
    }
    String journal = folder.resolve("sent").toString();
    Run run = Run.of("send", transactions(), "--server", address, "--journal", journal);
    assertEquals(ExitStatus.INTERNAL, run.status());
    assertTrue(run.err().contains("saw     nobody who listens there"), run.err());
    assertTrue(run.err().contains("16 not tried"), run.err());
    Run fetch =
        Run.of("fetch", "Observation", "--server", address, "-o", folder.resolve("f").toString());
    assertEquals(ExitStatus.INTERNAL, fetch.status());
    assertFalse(Files.exists(folder.resolve("f")));
  }

  @Test
  void refusesOptionsThatDoNotFitEachOther() throws IOException {
    String file = transactions();
    Path token = Files.writeString(folder.resolve("token"), "secret-token");
    String at = "http://127.0.0.1:9/fhir";
    List<List<String>> wrong =
        List.of(
            List.of("--server", at),
            List.of("--server", "host", "--dry-run"),
            List.of("--server", at, "--dry-run", "--client-id", "c"),
            List.of("--server", at, "--dry-run", "--client-id", "c", "--client-key", "k"),
            List.of("--server", at, "--dry-run", "--proxy", "p"),
            List.of("--server", at, "--dry-run", "--proxy", "p:1", "--token-file", token + ""),
            List.of("--server", at, "--dry-run", "--transaction-size", "0"),
            List.of("--server", at, "--dry-run", "--token-file", token + "", "--client-id", "c"));
    for (List<String> options : wrong) {
      List<String> all = new java.util.ArrayList<>(List.of("send", file));
      all.addAll(options);
      Run run = Run.of(all.toArray(String[]::new));
      assertEquals(ExitStatus.USAGE, run.status(), () -> options + run.err());
    }
    Run open =
        Run.of(
            "send", file, "--server", "http://h.example", "--dry-run", "--token-file", token + "");
    assertEquals(ExitStatus.INTERNAL, open.status());
    assertFalse((open.out() + open.err()).contains("secret-token"));
  }

  @Test
  void showsNoSecretInADryRun() throws IOException {
    Path token = Files.writeString(folder.resolve("token"), "secret-token");
    Run run =
        Run.of(
                "send",
                transactions(),
                "--server",
                "https://host.example/fhir",
                "--dry-run",
                "--token-file",
                token.toString())
            .ok();
    assertTrue(run.out().contains("with a token that is not shown"), run.out());
    assertFalse((run.out() + run.err()).contains("secret-token"));
    assertTrue(run.out().contains("  PUT Observation?identifier="));
  }
}
