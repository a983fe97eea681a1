package org.isopter.cli.command;

import org.isopter.cli.option.FhirInputs;
import org.isopter.task.check.ValidateTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.WordForm;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Validates FHIR. */
@Command(
    name = "validate",
    description = {
      "Validates FHIR R4 resources and bundles against the profiles that they claim.",
      "It needs no network. What our profiles do not decide is left to the reference validator,",
      "whose definitions take some seconds to load."
    },
    footer = {
      "",
      "Examples:",
      "  isopter validate target/bundles/01-harbour-pilot.json",
      "  isopter validate target/all.ndjson --format json",
      "  isopter validate target/bundles/01-harbour-pilot.json --reference"
    })
public final class ValidateCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to report: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is a FHIR OperationOutcome a line, one for each resource."
      })
  WordForm format = WordForm.TEXT;

  @Option(
      names = "--reference",
      description = "Ask the reference validator about every resource: slower by far.")
  boolean reference;

  @Mixin final FhirInputs forms = new FhirInputs();

  public ValidateCommand(Streams streams) {
    super(streams);
  }

  @Override
  IssueSink issues() {
    return format.on(streams.out());
  }

  @Override
  void run(RunLog log) {
    (reference ? ValidateTask.byReference(log) : new ValidateTask(log)).run(inputs(forms));
  }
}
