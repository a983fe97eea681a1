package org.isopter.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.task.io.RealPath;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** The files that the options of one command line name. */
final class NamedFiles {

  /** The options whose files are written, whatever else is in them. */
  private static final Set<String> WRITTEN =
      Set.of(
          "--output",
          "--report",
          "--table",
          "--carried",
          "--journal",
          "--leftover",
          "--origins",
          "--html");

  private NamedFiles() {}

  /**
   * Refuses a file that one option writes and another one writes or reads: the one would be lost.
   *
   * @throws ParameterException when two options name one file
   */
  static void refuseOneForTwo(ParseResult line) {
    ParseResult command = line.hasSubcommand() ? line.subcommand() : line;
    Map<Path, String> named = new HashMap<>();
    for (OptionSpec option : command.matchedOptions()) {
      boolean file = option.paramLabel().contains("FILE");
      for (String value : file ? option.stringValues() : List.<String>of()) {
        Optional<Path> path = file(value);
        String name = option.longestName();
        String other = path.map(found -> named.put(found, name)).orElse(name);
        boolean written = WRITTEN.contains(name) || WRITTEN.contains(other);
        if (written && !other.equals(name)) {
          throw new ParameterException(
              command.commandSpec().commandLine(),
              "%s and %s name one file, %s: each needs its own".formatted(other, name, value));
        }
      }
    }
  }

  /** Returns a file, or what may become one; a folder and a device hold more than one thing. */
  private static Optional<Path> file(String name) {
    try {
      Path path = Path.of(name);
      boolean one = !name.equals("-") && (!Files.exists(path) || Files.isRegularFile(path));
      return one ? Optional.of(RealPath.of(path)) : Optional.empty();
    } catch (InvalidPathException said) {
      return Optional.empty();
    }
  }
}
