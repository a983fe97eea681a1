package org.isopter.task.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.util.Optional;

/** A dialogue of lines alone: in a pipe, from a file, and where a terminal can do no more. */
public final class PlainDialogue implements Dialogue {

  private final BufferedReader typed;
  private final PrintStream shown;

  /** Makes a dialogue whose lines come from a reader. */
  public PlainDialogue(BufferedReader typed, PrintStream shown) {
    this.typed = typed;
    this.shown = shown;
  }

  /** Returns a dialogue over the input and the words of a run. */
  public static Dialogue over(Streams streams) {
    return new PlainDialogue(
        new BufferedReader(new InputStreamReader(streams.in(), UTF_8)), streams.err());
  }

  @Override
  public void say(String line) {
    shown.println(line);
  }

  @Override
  public Optional<String> ask(String label) throws IOException {
    shown.print(label + ": ");
    shown.flush();
    return Optional.ofNullable(typed.readLine());
  }

  @Override
  public void close() throws IOException {
    typed.close();
  }
}
