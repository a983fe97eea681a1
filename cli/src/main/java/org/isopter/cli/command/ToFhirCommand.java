package org.isopter.cli.command;

import org.isopter.cli.option.RecordInputs;
import org.isopter.cli.option.ToFhirOptions;
import org.isopter.task.convert.ToFhirTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Turns records into FHIR. */
@Command(
    name = "to-fhir",
    description = {
      "Turns records into FHIR R4 bundles.",
      "What from-fhir kept beside a record is put back."
    },
    footer = {
      "",
      "Examples:",
      "  isopter to-fhir docs/demo/01-harbour-pilot.yaml",
      "  isopter to-fhir docs/demo --output target/bundles/",
      "  isopter to-fhir docs/demo --as transaction --output target/all.ndjson"
    })
public final class ToFhirCommand extends InputCommand {

  @Mixin final ToFhirOptions to = new ToFhirOptions();
  @Mixin final RecordInputs forms = new RecordInputs();

  public ToFhirCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new ToFhirTask(log, to.request()).run(inputs(forms));
  }
}
