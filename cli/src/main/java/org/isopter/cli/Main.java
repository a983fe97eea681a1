package org.isopter.cli;

import java.io.PrintWriter;
import java.util.Optional;
import org.isopter.cli.terminal.EditedDialogue;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.input.Records;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;

/** The isopter command: with no subcommand it tells how it is used. */
@Command(
    name = "isopter",
    versionProvider = Main.Version.class,
    description = "Turns a bedside eye examination into a typed, coded record and FHIR R4.",
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Examples:",
      "  isopter check docs/demo",
      "  isopter to-fhir docs/demo/01-harbour-pilot.yaml",
      "  isopter round-trip docs/demo",
      "",
      "Exit status: 0 done, 1 could not finish, 2 wrong command line, 3 an input was refused,",
      "4 something was left over."
    })
public final class Main implements Runnable {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  boolean version;

  /** Made by picocli, which sets the spec. */
  @SuppressWarnings("NullAway.Init")
  public Main() {}

  /**
   * Runs the command and exits with its status.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    warmUp();
    // Not by method reference, which would load what a terminal needs at every start.
    System.exit(run(Streams.standard().at(streams -> EditedDialogue.open(streams)), args));
  }

  /** Makes the catalogue while the command line is read: each takes a while, and neither waits. */
  private static void warmUp() {
    Thread thread = new Thread(Records::new, "warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  /** Runs the command without ending the JVM, so that a test can see what it does. */
  static int run(Streams streams, String... args) {
    Optional<String> unread = ErrorHandlers.unread(args);
    if (unread.isPresent()) {
      streams.err().println("isopter: " + unread.get());
      streams.err().flush();
      return ExitStatus.USAGE;
    }
    try {
      int status = Commands.line(streams, args).execute(args);
      streams.flush();
      return status;
    } catch (UnwritableException failed) {
      streams.err().println("isopter: " + failed.getMessage());
      streams.err().flush();
      return ExitStatus.INTERNAL;
    }
  }

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    spec.commandLine().usage(out);
  }

  /** The version that the build wrote into the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"isopter " + (version == null ? "(unpackaged)" : version)};
    }
  }
}
