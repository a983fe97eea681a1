package org.isopter.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what went wrong before or around a command, and gives the exit status for it. */
final class Mistakes {

  private Mistakes() {}

  /** Says in one line what is wrong with a command line, and where to read more. */
  static int misuse(ParameterException mistake, String[] args) {
    CommandLine line = mistake.getCommandLine();
    PrintWriter err = line.getErr();
    err.println("isopter: " + mistake.getMessage());
    UnmatchedArgumentException.printSuggestions(mistake, err);
    err.println("Try '" + line.getCommandSpec().qualifiedName() + " --help'.");
    return ExitStatus.USAGE;
  }

  /** Says in one line what stopped a command; more only when it is asked for. */
  static int failure(Exception mistake, CommandLine line, List<String> args) {
    if (mistake instanceof UnwritableException) {
      line.getErr().println("isopter: " + mistake.getMessage());
    } else {
      line.getErr().println("isopter: " + Words.internal(mistake));
    }
    if (args.contains("--debug")) {
      mistake.printStackTrace(line.getErr());
    }
    return ExitStatus.INTERNAL;
  }
}
