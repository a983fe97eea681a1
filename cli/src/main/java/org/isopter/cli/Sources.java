package org.isopter.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Finds what the arguments of a command name: files, folders, and {@code -} for standard input. */
final class Sources {

  private static final String STANDARD_INPUT = "-";

  private final Set<Form> accepted;
  private final Optional<Form> stated;
  private final InputStream in;
  private final Journal journal;
  private final List<Source> found = new ArrayList<>();

  /**
   * Makes a finder.
   *
   * @param accepted the forms that the command reads
   * @param stated the form that the command line states, for files whose name does not tell it
   */
  Sources(Set<Form> accepted, Optional<Form> stated, InputStream in, Journal journal) {
    this.accepted = accepted;
    this.stated = stated;
    this.in = in;
    this.journal = journal;
  }

  /** Returns the sources in the order of the arguments, and within a folder by name. */
  List<Source> find(List<String> arguments) {
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
      journal.missing(argument, "not-found", "no such file or folder");
    }
  }

  /** A shell leaves a pattern as it is where it is quoted, or where it finds nothing. */
  private void wildcards(String pattern) {
    try {
      List<Path> files = Wildcards.files(pattern);
      files.forEach(file -> file(file.toString(), file));
      if (files.isEmpty()) {
        journal.missing(pattern, "not-found", "no file has such a name");
      }
    } catch (IOException failed) {
      journal.unreadable(pattern, failed);
    }
  }

  private void standardInput() {
    stated.ifPresentOrElse(
        form -> found.add(new Source("standard input", form, Path.of("standard-input"), () -> in)),
        () ->
            journal.missing(
                "standard input", "required", "no name tells its form; add --input-format"));
  }

  private void file(String name, Path path) {
    Optional<Form> form = stated.or(() -> Form.ofFileName(name));
    if (form.filter(accepted::contains).isEmpty()) {
      String text =
          "not one of the files read here (%s); if it is one by another name, add --input-format"
              .formatted(Form.patterns(accepted));
      journal.missing(name, "not-supported", text);
      return;
    }
    Path inside = Optional.ofNullable(path.getFileName()).orElse(path);
    found.add(Source.of(name, form.get(), inside, path));
  }

  private void folder(String name, Path folder) {
    int before = found.size();
    try (Stream<Path> below = Files.walk(folder)) {
      below.filter(Files::isRegularFile).sorted().forEach(file -> below(folder, file));
    } catch (IOException failed) {
      journal.unreadable(name, failed);
    }
    if (found.size() == before) {
      journal.say(name + " holds none of " + Form.patterns(accepted) + ": nothing to do");
    }
  }

  private void below(Path folder, Path file) {
    // A folder may hold anything; what is of no known kind in it was not asked for.
    Form.ofFileName(file.toString())
        .filter(accepted::contains)
        .ifPresent(
            form -> found.add(Source.of(file.toString(), form, folder.relativize(file), file)));
  }
}
