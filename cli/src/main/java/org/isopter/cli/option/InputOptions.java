package org.isopter.cli.option;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.Inputs;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What the commands that read files have in common. */
public final class InputOptions {

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE|FOLDER|-",
      description = "Files, folders (with all below them), '*.json', or - for standard input.")
  private List<String> inputs = List.of();

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description = "Write what is said of the inputs to FILE too: a FHIR OperationOutcome a line.")
  private @Nullable Path report;

  @Option(names = "--debug", description = "Show where an internal error happened.")
  private boolean debug;

  /** Returns what the command line names, in the forms that the command reads. */
  public Inputs inputs(InputForms forms, InputStream in) {
    return new Inputs(inputs, forms.accepted(), forms.stated(), in, Optional.ofNullable(report));
  }

  /** Returns the file of OperationOutcomes; null where none is asked for. */
  public @Nullable Path report() {
    return report;
  }

  public boolean isDebug() {
    return debug;
  }
}
