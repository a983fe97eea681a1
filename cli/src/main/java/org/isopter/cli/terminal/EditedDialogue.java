package org.isopter.cli.terminal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.isopter.task.io.Dialogue;
import org.isopter.task.io.PlainDialogue;
import org.isopter.task.io.Streams;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.reader.impl.DefaultParser;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/**
 * A dialogue at a terminal, whose lines can be edited before they are entered: arrows, deleting,
 * and the earlier lines again with the arrow up. Nothing is drawn but the line itself, and no
 * earlier line is kept when it ends.
 */
public final class EditedDialogue implements Dialogue {

  private static final Size USUAL = Size.of(80, 24);

  private final Terminal terminal;
  private final LineReader reader;

  private EditedDialogue(Terminal terminal) {
    this.terminal = terminal;
    this.reader =
        LineReaderBuilder.builder()
            .terminal(terminal)
            // A quote is an inch or a second of arc here, and leaves no line open.
            .parser(new DefaultParser().quoteChars(new char[0]).escapeChars(new char[0]))
            .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
            .option(LineReader.Option.BRACKETED_PASTE, false)
            .build();
  }

  /**
   * Opens a dialogue at the terminal of the process; one of plain lines where that is none, or one
   * that cannot move its cursor: {@code TERM=dumb} asks for that.
   */
  public static Dialogue open(Streams streams) {
    streams.flush();
    String type = Optional.ofNullable(System.getenv("TERM")).orElse("dumb");
    if (type.equals("dumb")) {
      return PlainDialogue.over(streams);
    }
    try {
      return on(system());
    } catch (IOException | IllegalStateException noTerminal) {
      return PlainDialogue.over(streams);
    }
  }

  /** Returns a dialogue at a terminal. */
  public static Dialogue on(Terminal terminal) {
    if (terminal.getSize().getColumns() == 0 || terminal.getSize().getRows() == 0) {
      // A terminal that does not know its size has no room for a line.
      terminal.setSize(USUAL);
    }
    return new EditedDialogue(terminal);
  }

  /** Words go to standard error, and the terminal is set by stty, without code of a platform. */
  private static Terminal system() throws IOException {
    // Questions to the terminal would swallow what is typed before it answers.
    System.setProperty(TerminalBuilder.PROP_PROBE_TIMEOUT, "0");
    return TerminalBuilder.builder()
        .provider(TerminalBuilder.PROP_PROVIDER_EXEC)
        .system(true)
        .systemOutput(TerminalBuilder.SystemOutput.SysErr)
        .encoding(StandardCharsets.UTF_8)
        .graphemeCluster(false)
        .dumb(false)
        .build();
  }

  @Override
  public void say(String line) {
    terminal.writer().println(line);
    terminal.flush();
  }

  @Override
  public Optional<String> ask(String label) {
    try {
      return Optional.of(reader.readLine(label + ": "));
    } catch (EndOfFileException | UserInterruptException ended) {
      return Optional.empty();
    }
  }

  @Override
  public void close() throws IOException {
    terminal.close();
  }
}
