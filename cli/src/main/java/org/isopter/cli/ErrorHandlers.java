package org.isopter.cli;

import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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

  /** The sign that stands for bytes that were not understood. */
  private static final String UNREAD = "\ufffd";

  private static final String LOCALE =
      "Where Java was started with a locale of ASCII, set LC_ALL=C.UTF-8";

  private ErrorHandlers() {}

  /** Returns what is wrong with arguments whose letters Java did not understand. */
  static Optional<String> unread(String... args) {
    return Arrays.stream(args)
        .filter(arg -> arg.contains(UNREAD))
        .map(arg -> "\"" + Messages.visible(arg) + "\" has letters that were not read. " + LOCALE)
        .findFirst();
  }

  /** Says in one line what is wrong with a command line, and where to read more. */
  static int misuse(ParameterException mistake, String[] args) {
    CommandLine line = mistake.getCommandLine();
    PrintWriter err = line.getErr();
    err.println("isopter: " + Messages.visible(words(mistake)));
    UnmatchedArgumentException.printSuggestions(mistake, err);
    err.println("Try '" + line.getCommandSpec().qualifiedName() + " --help'.");
    return ExitStatus.USAGE;
  }

  /** Says in one line what stopped a command; more only when it is asked for. */
  static int failure(Exception mistake, CommandLine line, List<String> args) {
    if (mistake instanceof UsageException) {
      return misuse(new ParameterException(line, mistake.getMessage()), new String[0]);
    }
    if (mistake instanceof InvalidPathException path) {
      String text = "\"" + path.getInput() + "\" is no name of a file here. " + LOCALE;
      return misuse(new ParameterException(line, text), new String[0]);
    }
    if (mistake instanceof UnwritableException) {
      line.getErr().println("isopter: " + Messages.visible("" + mistake.getMessage()));
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
        .replace(" (case-insensitive)", "")
        .replaceAll("is not an? (int|long)$", "is no whole number that fits here");
  }
}
