package org.isopter.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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

  @Mixin final FhirInputs forms = new FhirInputs();

  ValidateCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
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
