package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.isopter.cli.terminal.EditedDialogue;
import org.isopter.task.io.Streams;
import org.jline.terminal.Size;
import org.jline.terminal.impl.ExternalTerminal;

/**
 * Somebody at a terminal in which a command runs: a terminal in this process, with the line
 * discipline of a real one.
 */
final class Sitting implements AutoCloseable {

  private final ByteArrayOutputStream screen = new ByteArrayOutputStream();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final PipedOutputStream keyboard = new PipedOutputStream();
  private final ExternalTerminal terminal;
  private final CompletableFuture<Integer> status;
  private int seen;

  private Sitting(String... args) throws IOException {
    terminal =
        new ExternalTerminal("sitting", "xterm", new PipedInputStream(keyboard), screen, UTF_8);
    terminal.setSize(Size.of(100, 30));
    Streams streams =
        new Streams(
                InputStream.nullInputStream(),
                new PrintStream(out, true, UTF_8),
                new PrintStream(screen, true, UTF_8),
                true)
            .at(any -> EditedDialogue.on(terminal));
    status = CompletableFuture.supplyAsync(() -> Main.run(streams, args));
  }

  static Sitting of(String... args) throws IOException {
    return new Sitting(args);
  }

  /** Waits until a text stands on the screen, behind what was waited for before. */
  Sitting awaits(String text) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (screen().indexOf(text, seen) < 0) {
      assertTrue(System.nanoTime() < end, () -> text + " is not in\n" + screen().substring(seen));
      Thread.sleep(5);
    }
    seen = screen().indexOf(text, seen) + text.length();
    return this;
  }

  Sitting types(String keys) throws IOException {
    keyboard.write(keys.getBytes(UTF_8));
    keyboard.flush();
    return this;
  }

  int status() throws Exception {
    return status.get(20, TimeUnit.SECONDS);
  }

  /** Returns all that was ever written to the screen. */
  String screen() {
    return screen.toString(UTF_8);
  }

  String out() {
    return out.toString(UTF_8);
  }

  @Override
  public void close() throws IOException {
    keyboard.close();
    terminal.close();
  }
}
