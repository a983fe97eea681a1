package org.isopter.cli.option;

import java.util.Optional;
import java.util.Set;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputForms;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Inputs that are records. */
public final class RecordInputs implements InputForms {

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      converter = FormWord.OfRecords.class,
      completionCandidates = FormWord.OfRecords.class,
      description = "Form of the inputs, for names that do not show it: ${COMPLETION-CANDIDATES}.")
  @Nullable InputForm inputFormat;

  @Override
  public Optional<InputForm> stated() {
    return Optional.ofNullable(inputFormat);
  }

  @Override
  public Set<InputForm> accepted() {
    return InputForm.OF_RECORDS;
  }
}
