package org.isopter.task.input;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.task.io.RealPath;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;

/**
 * What a task reads.
 *
 * @param names files, folders with all below them, patterns such as {@code in/*.json}, or {@code -}
 * @param accepted the forms that are read
 * @param stated the form of what has a name that does not say it, as {@code -}
 * @param in what {@code -} reads
 * @param report a file that the caller writes meanwhile and that may be no input; empty for none
 */
public record Inputs(
    List<String> names,
    Set<InputForm> accepted,
    Optional<InputForm> stated,
    InputStream in,
    Optional<Path> report) {

  public Inputs {
    names = List.copyOf(names);
    accepted = Collections.unmodifiableSet(EnumSet.copyOf(accepted));
  }

  /** Returns records as inputs: YAML, JSON or lines of JSON, as their names say. */
  public static Inputs records(String... names) {
    return files(InputForm.OF_RECORDS, names);
  }

  /** Returns FHIR as inputs: JSON, XML or lines of JSON, as their names say. */
  public static Inputs fhir(String... names) {
    return files(InputForm.OF_FHIR, names);
  }

  /** Returns records and FHIR as inputs. */
  public static Inputs any(String... names) {
    return files(InputForm.OF_EITHER, names);
  }

  private static Inputs files(Set<InputForm> forms, String... names) {
    return new Inputs(
        List.of(names), forms, Optional.empty(), InputStream.nullInputStream(), Optional.empty());
  }

  /** Returns these inputs where files of one more form are read too. */
  public Inputs accepting(InputForm more) {
    Set<InputForm> all = EnumSet.of(more);
    all.addAll(accepted);
    return new Inputs(names, all, stated, in, report);
  }

  /**
   * Returns the files and streams in the order of the names, and within a folder by name; what is
   * not there is in the log.
   *
   * @throws UsageException when the report is one of them
   */
  public List<InputSource> find(RunLog log) {
    List<InputSource> found = new InputSources(accepted, stated, in, log).find(names);
    refuseToOverwrite(found, "--report", report.orElse(null));
    return found;
  }

  /**
   * Refuses a file to write that is one of the inputs.
   *
   * @param option what the caller calls the file
   * @throws UsageException when the file is an input
   */
  public static void refuseToOverwrite(
      List<InputSource> sources, String option, @Nullable Object file) {
    if (file == null) {
      return;
    }
    Path target = RealPath.of(Path.of(file.toString()));
    if (sources.stream()
        .flatMap(source -> source.file().stream())
        .anyMatch(input -> RealPath.of(input).equals(target))) {
      throw new UsageException(option + " " + file + " is an input, which is never written over");
    }
  }
}
