package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A long run that is killed goes on where it was, without loss or duplicate. */
class ResumeTest {

  private static final int LINES = 6_000;

  @TempDir Path folder;

  @Test
  void aKilledProcessIsResumed() throws IOException, InterruptedException {
    Path input = input(LINES);
    run(input, "whole");
    kill(input);
    assertFalse(Files.exists(folder.resolve("killed.ndjson")), "the process was too fast to kill");
    Run resumed = run(input, "killed", "--resume");
    assertTrue(
        resumed.err().contains(" written as ndjson to " + folder.resolve("killed.ndjson")),
        resumed.err());
    for (String file : List.of(".ndjson", ".ndjson.carried", ".report")) {
      String whole = text("whole" + file);
      assertEquals(LINES, whole.lines().count(), file);
      // Not assertEquals: it would print all of both.
      assertTrue(whole.equals(text("killed" + file)), file + " differs after the kill");
    }
    assertFalse(Files.exists(folder.resolve("killed.ndjson.checkpoint")));
  }

  @Test
  void anotherRunCannotGoOn() throws IOException, InterruptedException {
    Path input = input(LINES);
    kill(input);
    Run other =
        Run.of(
            "from-fhir",
            input.toString(),
            "-o",
            folder + "/killed.ndjson",
            "--report",
            folder + "/killed.report",
            "--resume",
            "--zone",
            "Europe/Paris");
    assertEquals(ExitStatus.USAGE, other.status());
    assertTrue(other.err().contains("cannot go on"), other.err());
    assertTrue(other.err().contains("zone Europe/Paris"), other.err());
  }

  @Test
  void onlyOneFileOfLinesIntoAnotherCanBeResumed() {
    Run run = Run.of("from-fhir", "docs/foreign/clinic.json", "-o", folder + "/x.yaml", "--resume");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("--resume needs one NDJSON file"), run.err());
  }

  @Test
  void withNothingToGoOnFromItStartsAtTheBeginning() throws IOException {
    Path input = input(10);
    run(input, "a", "--resume");
    assertEquals(10, text("a.ndjson").lines().count());
  }

  private Run run(Path input, String name, String... more) {
    String[] args = new String[6 + more.length];
    List<String> first =
        List.of(
            "from-fhir",
            input.toString(),
            "-o",
            folder + "/" + name + ".ndjson",
            "--report",
            folder + "/" + name + ".report");
    for (int i = 0; i < args.length; i++) {
      args[i] = i < 6 ? first.get(i) : more[i - 6];
    }
    return Run.of(args).ok();
  }

  /** Starts the run in a JVM of its own and kills it after its first block. */
  private void kill(Path input) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "from-fhir",
                input.toString(),
                "-o",
                folder + "/killed.ndjson",
                "--report",
                folder + "/killed.report")
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("killed.out").toFile())
            .start();
    Instant end = Instant.now().plus(Duration.ofMinutes(3));
    Path mark = folder.resolve("killed.ndjson.checkpoint");
    while (!Files.exists(mark) && process.isAlive() && Instant.now().isBefore(end)) {
      Thread.sleep(5);
    }
    process.destroyForcibly().waitFor();
    assertTrue(Files.exists(mark), () -> "no checkpoint: " + output());
  }

  private String output() {
    try {
      return text("killed.out");
    } catch (IOException unreadable) {
      return unreadable.toString();
    }
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name), UTF_8);
  }

  private Path input(int lines) throws IOException {
    String line =
        Files.readString(Path.of("docs/foreign/lines.ndjson")).lines().findFirst().orElseThrow();
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < lines; i++) {
      String own =
          line.replace("Patient/1", "Patient/" + i).replace("\"p1-left\"", "\"p" + i + "\"");
      text.append(own).append('\n');
    }
    return Files.writeString(folder.resolve("in.ndjson"), text, UTF_8);
  }
}
