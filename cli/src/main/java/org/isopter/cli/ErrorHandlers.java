package org.isopter.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.UsageException;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what went wrong before or around a command, and gives the exit status for it. */
final class ErrorHandlers {

  private static final Pattern CHOICES = Pattern.compile("\\[[A-Z_, ]+\\]");

  private ErrorHandlers() {}

  /** Says in one line what is wrong with a command line, and where to read more. */
  static int misuse(ParameterException mistake, String[] args) {
    CommandLine line = mistake.getCommandLine();
    PrintWriter err = line.getErr();
    err.println("isopter: " + words(mistake));
    UnmatchedArgumentException.printSuggestions(mistake, err);
    err.println("Try '" + line.getCommandSpec().qualifiedName() + " --help'.");
    return ExitStatus.USAGE;
  }

  /** Says in one line what stopped a command; more only when it is asked for. */
  static int failure(Exception mistake, CommandLine line, List<String> args) {
    if (mistake instanceof UsageException) {
      return misuse(new ParameterException(line, mistake.getMessage()), new String[0]);
    }
    if (mistake instanceof UnwritableException) {
      line.getErr().println("isopter: " + mistake.getMessage());
    } else {
      line.getErr().println("isopter: " + Messages.internal(mistake));
    }
    if (args.contains("--debug")) {
      mistake.printStackTrace(line.getErr());
    }
    return ExitStatus.INTERNAL;
  }

  /** The words of an option are written in lower case wherever else they are shown. */
  private static String words(ParameterException mistake) {
    return CHOICES
        .matcher(String.valueOf(mistake.getMessage()))
        .replaceAll(found -> found.group().toLowerCase(Locale.ROOT))
        .replace(" (case-insensitive)", "");
  }
}
