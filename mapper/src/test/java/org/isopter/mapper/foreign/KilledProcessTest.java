package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.isopter.mapper.foreign.run.Checkpoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A process that the machine kills in the middle goes on where it was, to the byte. */
class KilledProcessTest {

  private static final int LINES = 1_500;
  private static final int BLOCK = 50;
  private static final int SAME = -1;

  @TempDir Path folder;

  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES)
  void goesOnWithoutLossOrDuplicate() throws IOException, InterruptedException {
    Path input = folder.resolve("in.ndjson");
    ForeignLines.write(input, LINES, 7);
    Path whole = folder.resolve("whole");
    Path killed = folder.resolve("killed");
    assertEquals(0, start(input, whole, BLOCK).waitFor());

    Process dying = start(input, killed, BLOCK);
    awaitCheckpoint(killed, dying);
    // On Unix a kill -9: the process runs nothing more.
    dying.destroyForcibly().waitFor();
    assertFalse(Files.exists(killed), "the run was over before it was killed");

    assertEquals(0, start(input, killed, BLOCK, "resume").waitFor());
    assertEquals(SAME, Files.mismatch(whole, killed));
    assertEquals(SAME, Files.mismatch(LinesProcess.report(whole), LinesProcess.report(killed)));
  }

  private static void awaitCheckpoint(Path output, Process run)
      throws IOException, InterruptedException {
    while (Checkpoint.load(Checkpoint.beside(output)).isEmpty()) {
      assertTrue(run.isAlive(), "the run ended without a checkpoint");
      Thread.sleep(5);
    }
  }

  private static Process start(Object... arguments) throws IOException {
    List<String> command = LinesProcess.command("256m", arguments);
    return new ProcessBuilder(command).inheritIO().start();
  }
}
