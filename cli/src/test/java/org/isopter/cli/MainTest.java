package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command line itself: help, version, completion, and what is wrong with it. */
class MainTest {

  static List<String> commands() {
    return List.copyOf(
        Commands.line(new Streams(System.in, System.out, System.err)).getSubcommands().keySet());
  }

  @Test
  void helpGoesToStandardOutput() {
    Run run = Run.of("--help").ok();
    assertTrue(run.out().startsWith("Usage: isopter"), run.out());
    assertEquals("", run.err());
  }

  @Test
  void noArgumentsShowsTheUsage() {
    assertEquals(Run.of("--help").out(), Run.of().ok().out());
  }

  @Test
  void helpNamesEveryCommand() {
    String help = Run.of("--help").out();
    for (String command : commands()) {
      assertTrue(help.contains("\n  " + command), command);
    }
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandHelpsByExample(String command) {
    Run run = Run.of(command, "--help").ok();
    assertTrue(run.out().contains("Examples:\n  "), run.out());
    assertTrue(run.out().contains("  isopter " + command) || command.equals("completion"));
    assertEquals("", run.err());
  }

  /** The list of commands shows the first sentence alone. */
  @ParameterizedTest
  @MethodSource("commands")
  void aHelpBeginsWithAWholeSentence(String command) {
    String[] help =
        Commands.line(new Streams(System.in, System.out, System.err))
            .getSubcommands()
            .get(command)
            .getCommandSpec()
            .usageMessage()
            .description();
    assertTrue(help[0].endsWith("."), help[0]);
  }

  @Test
  void helpFitsTheWidthOfATerminal() {
    for (String command : commands()) {
      assertTrue(
          Run.of(command, "--help").out().lines().allMatch(line -> line.length() <= 100), command);
    }
  }

  @Test
  void versionNamesTheCommand() {
    assertTrue(Run.of("--version").ok().out().startsWith("isopter "));
  }

  @Test
  void completionKnowsTheCommandsAndTheirOptions() {
    String script = Run.of("completion").ok().out();
    for (String command : commands()) {
      assertTrue(script.contains(command), command);
    }
    assertTrue(script.contains("--input-format"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"--no-such-option", "check --no-such-option x", "to-fhir", "no-such-one"})
  void aWrongCommandLineSaysSoInAFewLinesAndNamesTheHelp(String line) {
    Run run = Run.of(Console.words(line).toArray(String[]::new));
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().startsWith("isopter: "), run.err());
    assertTrue(run.err().contains("--help'"), run.err());
    assertTrue(run.err().lines().count() <= 3, run.err());
    assertEquals("", run.out());
  }

  @Test
  void aWrongWordForAnOptionShowsTheRightOnesAsTheyAreWritten() {
    Run run = Run.of("to-fhir", "--as", "bundle", "x.yaml");
    assertEquals(ExitStatus.USAGE, run.status());
    assertTrue(run.err().contains("[collection, transaction, document]"), run.err());
  }

  @Test
  void ofTwoStatusesTheSmallerOneCounts() {
    assertEquals(ExitStatus.REFUSED, ExitStatus.worse(ExitStatus.OK, ExitStatus.REFUSED));
    assertEquals(ExitStatus.USAGE, ExitStatus.worse(ExitStatus.REFUSED, ExitStatus.USAGE));
    assertEquals(ExitStatus.OK, ExitStatus.worse(ExitStatus.OK, ExitStatus.OK));
  }
}
