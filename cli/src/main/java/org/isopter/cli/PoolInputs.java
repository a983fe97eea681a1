package org.isopter.cli;

import java.util.EnumSet;
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
  @Nullable Form inputFormat;

  @Override
  public Optional<Form> stated() {
    return Optional.ofNullable(inputFormat);
  }

  @Override
  public Set<Form> accepted() {
    return EnumSet.allOf(Form.class);
  }
}
