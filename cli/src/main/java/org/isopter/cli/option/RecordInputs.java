package org.isopter.cli.option;

import java.util.Optional;
import java.util.Set;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.RecordForm;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Inputs that are records. */
public final class RecordInputs implements InputForms {

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not show it: ${COMPLETION-CANDIDATES}.")
  @Nullable RecordForm inputFormat;

  @Override
  public Optional<InputForm> stated() {
    return Optional.ofNullable(inputFormat).map(RecordForm::form);
  }

  @Override
  public Set<InputForm> accepted() {
    return RecordForm.ALL;
  }
}
