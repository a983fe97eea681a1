package org.isopter.task.output;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.isopter.task.input.InputForm;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;

/**
 * Where documents are written.
 *
 * @param name a file, or a folder, which exists or ends in a slash and gets a file for each
 *     document; empty for the data of the log
 */
public record Target(Optional<String> name) {

  /** Returns a file or folder; the data of the log for null. */
  public static Target of(@Nullable String name) {
    return new Target(Optional.ofNullable(name));
  }

  /** Returns the data of the log. */
  public static Target data() {
    return of(null);
  }

  /** Says whether each document gets a file of its own. */
  public boolean isFolder() {
    return name.filter(to -> to.endsWith("/") || Files.isDirectory(Path.of(to))).isPresent();
  }

  /** Returns the file or folder; empty for the data of the log. */
  public Optional<Path> path() {
    return name.map(Path::of);
  }

  /**
   * Returns the form of what is written: the one that is asked for, or else the one that the name
   * of the file says, where it is possible.
   *
   * @throws UsageException when a form is asked for that is not possible
   */
  public Optional<InputForm> form(Optional<InputForm> asked, Set<InputForm> possible) {
    asked
        .filter(form -> !possible.contains(form))
        .ifPresent(
            form -> {
              throw new UsageException("--format " + form + " is none of " + possible);
            });
    return asked.or(
        () ->
            isFolder()
                ? Optional.empty()
                : name.flatMap(InputForm::ofFileName).filter(possible::contains));
  }
}
