package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What was entered is there after the process was killed. */
class KilledExamineTest {

  @TempDir Path folder;

  @Test
  @Timeout(120)
  void goesOnWhereItWasKilled() throws IOException, InterruptedException {
    Path draft = folder.resolve("v.draft");
    Process killed =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "examine",
                "--subject",
                "p-1",
                "--output",
                folder.resolve("v").toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("shown").toFile())
            .start();
    killed.getOutputStream().write("sc each 6/6\nx refused\n".getBytes(UTF_8));
    killed.getOutputStream().flush();
    while (!Files.exists(draft) || !Files.readString(draft).contains("refused")) {
      assertTrue(killed.isAlive(), "it ended: " + Files.readString(folder.resolve("shown")));
      Thread.sleep(10);
    }
    killed.destroyForcibly().waitFor();
    assertFalse(Files.exists(folder.resolve("v.yaml")));

    Run.with("\n".repeat(12), "examine", "--output", folder.resolve("v").toString()).ok();
    String record = Files.readString(folder.resolve("v.yaml"));
    assertTrue(record.contains("6/6") && record.contains("refused"), record);
  }
}
