package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.task.generate.GenerateForm;
import org.isopter.task.generate.GenerateTask;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Whom to invent, and where to write. */
public final class GenerateOptions {

  @Option(
      names = "--persons",
      required = true,
      paramLabel = "COUNT",
      description = "How many persons, each with 1 to 5 visits.")
  private int persons;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      defaultValue = "1",
      description = "Another seed makes other persons (default: ${DEFAULT-VALUE}).")
  private long seed;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where to write; standard output unless given, and for -.")
  private @Nullable String output;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "ndjson",
      converter = GenerateWord.class,
      description = {
        "A line is a record or a FHIR R4 collection bundle:",
        "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})."
      })
  private GenerateForm format = GenerateForm.NDJSON;

  @Option(
      names = "--groups",
      paramLabel = "FILE",
      description = {
        "Write what ails each person too, as the file",
        "that 'pool --persons' takes: id, system, group."
      })
  private @Nullable Path groups;

  /** Runs the task with these options. */
  public void run(RunLog log) {
    GenerateTask task = new GenerateTask(log, persons, seed, format);
    Optional.ofNullable(groups).ifPresent(task::groups);
    task.run(Optional.ofNullable(output).filter(file -> !file.equals("-")).map(Path::of));
  }
}
