package org.isopter.cli.option;

import java.util.Optional;
import java.util.Set;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.PoolForm;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Inputs that are records or FHIR, whichever they are. */
public final class PoolInputs implements InputForms {

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not show it: ${COMPLETION-CANDIDATES}.")
  @Nullable PoolForm inputFormat;

  @Override
  public Optional<InputForm> stated() {
    return Optional.ofNullable(inputFormat).map(PoolForm::form);
  }

  @Override
  public Set<InputForm> accepted() {
    return PoolForm.ALL;
  }
}
