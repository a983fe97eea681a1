package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.task.convert.FromFhirRequest;
import org.isopter.task.input.InputForm;
import org.isopter.task.output.Target;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What FHIR is turned into. */
public final class FromFhirOptions {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each examination."
      })
  private @Nullable String output;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      converter = FormWord.OfRecords.class,
      completionCandidates = FormWord.OfRecords.class,
      description = {
        "Form of the output: ${COMPLETION-CANDIDATES}.",
        "Unless given or known by the name of FILE, yaml for one examination of one input, else"
            + " ndjson; yaml in a folder."
      })
  private @Nullable InputForm format;

  @Option(
      names = "--carried",
      paramLabel = "FILE",
      description = "Where to keep what no rule takes; beside the records unless given.")
  private @Nullable Path carried;

  @Option(
      names = "--table",
      paramLabel = "FILE",
      description =
          "Write what became of each resource, and all counts, to FILE; - is the terminal.")
  private @Nullable String table;

  @Option(
      names = "--resume",
      description = {
        "Go on where a run was stopped that read one NDJSON file into another.",
        "Without it such a run starts again."
      })
  private boolean resume;

  @Mixin private final PolicyOptions policy = new PolicyOptions();

  /**
   * Returns what is asked for.
   *
   * @param report the file of OperationOutcomes; null for none
   */
  public FromFhirRequest request(@Nullable Path report) {
    return new FromFhirRequest(
        Target.of(output),
        Optional.ofNullable(format),
        Optional.ofNullable(carried),
        Optional.ofNullable(table),
        policy.reading(),
        Optional.ofNullable(report),
        resume);
  }
}
