package org.isopter.cli;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Validates FHIR. */
@Command(
    name = "validate",
    description = {
      "Validates FHIR R4 resources and bundles against the profiles that they claim.",
      "It needs no network. The definitions take some seconds to load."
    },
    footer = {
      "",
      "Examples:",
      "  isopter validate target/bundles/01-harbour-pilot.json",
      "  isopter validate target/all.ndjson --format json"
    })
final class ValidateCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to tell: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is a FHIR OperationOutcome a line, one for each resource."
      })
  WordForm format = WordForm.TEXT;

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not tell it: ${COMPLETION-CANDIDATES}.")
  @Nullable FhirForm inputFormat;

  ValidateCommand(Streams streams) {
    super(streams);
  }

  @Override
  Optional<Form> stated() {
    return Optional.ofNullable(inputFormat).map(FhirForm::form);
  }

  @Override
  Set<Form> accepted() {
    return EnumSet.of(Form.JSON, Form.XML, Form.NDJSON);
  }

  @Override
  IssueSink told() {
    return format.on(streams.out());
  }

  @Override
  void run(Journal journal) {
    Validation validation = new Validation(journal);
    new Items(journal).each(sources(journal), validation::validate);
    journal.sum("resource");
  }
}
