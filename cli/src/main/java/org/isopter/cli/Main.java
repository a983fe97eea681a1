package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.PrintStream;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** The isopter command: with no subcommand it tells how it is used. */
@Command(
    name = "isopter",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = "Turns a bedside eye examination into a typed, coded record and FHIR R4.")
public final class Main implements Runnable {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** Made by picocli, which sets the spec. */
  @SuppressWarnings("NullAway.Init")
  public Main() {}

  /**
   * Runs the command and exits with its status.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(run(System.out, System.err, args));
  }

  /** Runs the command without ending the JVM, so that a test can see what it does. */
  static int run(PrintStream out, PrintStream err, String... args) {
    return new CommandLine(new Main())
        .setOut(new PrintWriter(out, true, UTF_8))
        .setErr(new PrintWriter(err, true, UTF_8))
        .execute(args);
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
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
