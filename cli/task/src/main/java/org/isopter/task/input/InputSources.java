package org.isopter.task.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.task.report.RunLog;

/** Finds what the arguments of a command name: files, folders, and {@code -} for standard input. */
public final class InputSources {

  private static final String STANDARD_INPUT = "-";

  private final Set<InputForm> accepted;
  private final Optional<InputForm> stated;
  private final InputStream in;
  private final RunLog log;
  private final List<InputSource> found = new ArrayList<>();

  /**
   * Makes a finder.
   *
   * @param accepted the forms that the command reads
   * @param stated the form that the command line states, for files whose name does not tell it
   */
  public InputSources(
      Set<InputForm> accepted, Optional<InputForm> stated, InputStream in, RunLog log) {
    this.accepted = accepted;
    this.stated = stated;
    this.in = in;
    this.log = log;
  }

  /** Returns the sources in the order of the arguments, and within a folder by name. */
  public List<InputSource> find(List<String> arguments) {
    arguments.forEach(this::add);
    return found;
  }

  private void add(String argument) {
    if (argument.equals(STANDARD_INPUT)) {
      standardInput();
      return;
    }
    if (Wildcards.in(argument)) {
      wildcards(argument);
      return;
    }
    Path path = Path.of(argument);
    if (Files.isDirectory(path)) {
      folder(argument, path);
    } else if (Files.exists(path)) {
      file(argument, path);
    } else {
      log.missing(argument, "not-found", "no such file or folder");
    }
  }

  /** A shell leaves a pattern as it is where it is quoted, or where it finds nothing. */
  private void wildcards(String pattern) {
    try {
      List<Path> files = Wildcards.files(pattern);
      files.forEach(file -> file(file.toString(), file));
      if (files.isEmpty()) {
        log.missing(pattern, "not-found", "no file has such a name");
      }
    } catch (IOException failed) {
      log.unreadable(pattern, failed);
    }
  }

  private void standardInput() {
    stated.ifPresentOrElse(
        form ->
            found.add(new InputSource("standard input", form, Path.of("standard-input"), () -> in)),
        () ->
            log.missing(
                "standard input", "required", "no name shows its form; add --input-format"));
  }

  private void file(String name, Path path) {
    Optional<InputForm> form = stated.or(() -> InputForm.ofFileName(name));
    if (form.filter(accepted::contains).isEmpty()) {
      String text =
          "not one of the files read here (%s); if it is one by another name, add --input-format"
              .formatted(InputForm.patterns(accepted));
      log.missing(name, "not-supported", text);
      return;
    }
    Path inside = Optional.ofNullable(path.getFileName()).orElse(path);
    found.add(InputSource.of(name, form.get(), inside, path));
  }

  private void folder(String name, Path folder) {
    int before = found.size();
    try (Stream<Path> below = Files.walk(folder)) {
      below.filter(Files::isRegularFile).sorted().forEach(file -> below(folder, file));
    } catch (IOException failed) {
      log.unreadable(name, failed);
    }
    if (found.size() == before) {
      log.say(name + " holds none of " + InputForm.patterns(accepted) + ": nothing to do");
    }
  }

  private void below(Path folder, Path file) {
    // A folder may hold anything; what is of no known kind in it was not asked for.
    InputForm.ofFileName(file.toString())
        .filter(accepted::contains)
        .ifPresent(
            form ->
                found.add(InputSource.of(file.toString(), form, folder.relativize(file), file)));
  }
}
