package org.isopter.cli;

import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Inputs that are records or FHIR, whichever they are. */
final class PoolInputs implements InputForms {

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not tell it: ${COMPLETION-CANDIDATES}.")
  @Nullable PoolForm inputFormat;

  @Override
  public Optional<Form> stated() {
    return Optional.ofNullable(inputFormat).map(PoolForm::form);
  }

  @Override
  public Set<Form> accepted() {
    return PoolForm.ALL;
  }
}
