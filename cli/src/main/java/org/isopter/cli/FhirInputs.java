package org.isopter.cli;

import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Inputs that are FHIR. */
final class FhirInputs implements InputForms {

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not tell it: ${COMPLETION-CANDIDATES}.")
  @Nullable FhirForm inputFormat;

  @Override
  public Optional<Form> stated() {
    return Optional.ofNullable(inputFormat).map(FhirForm::form);
  }

  @Override
  public Set<Form> accepted() {
    return FhirForm.ALL;
  }
}
