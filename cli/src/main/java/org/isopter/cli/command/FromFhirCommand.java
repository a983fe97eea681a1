package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.cli.option.FhirInputs;
import org.isopter.cli.option.FromFhirOptions;
import org.isopter.task.convert.FromFhirRequest;
import org.isopter.task.convert.FromFhirTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Turns FHIR of any system into records. */
@Command(
    name = "from-fhir",
    description = {
      "Turns FHIR of any system into records.",
      "Clinical documents (CDA) and messages with results (HL7 v2) are read by the same rules.",
      "What to-fhir wrote comes back as it was. Of what others wrote, each resource is exact,"
          + " translated by named rules ('isopter catalogue --foreign'), or kept as it is; nothing is"
          + " guessed. What no rule takes goes into a file beside the records, OUTPUT.carried, which"
          + " to-fhir puts back."
    },
    footer = {
      "",
      "Examples:",
      "  isopter from-fhir target/bundles/01-harbour-pilot.json",
      "  isopter from-fhir target/bundles --output target/records/",
      "  isopter from-fhir docs/foreign/clinic.json --output target/clinic.yaml",
      "  isopter from-fhir 'docs/foreign/*.ndjson' --policy extract --report target/report.ndjson",
      "  isopter from-fhir docs/foreign/lines.ndjson --output target/lines.ndjson --resume"
    })
public final class FromFhirCommand extends InputCommand {

  @Mixin final FromFhirOptions to = new FromFhirOptions();
  @Mixin final FhirInputs forms = new FhirInputs();

  public FromFhirCommand(Streams streams) {
    super(streams);
  }

  /** A run over lines writes its report itself. */
  @Override
  Optional<Path> report() {
    return request().isLines(inputs(forms)) ? Optional.empty() : super.report();
  }

  @Override
  void run(RunLog log) {
    new FromFhirTask(log, request()).run(inputs(forms));
  }

  private FromFhirRequest request() {
    return to.request(options.report());
  }
}
