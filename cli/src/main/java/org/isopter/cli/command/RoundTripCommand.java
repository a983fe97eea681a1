package org.isopter.cli.command;

import org.isopter.cli.option.KindOption;
import org.isopter.cli.option.RecordInputs;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import org.isopter.task.roundtrip.RoundTripTask;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Shows that nothing is lost on the way to FHIR and back. */
@Command(
    name = "round-trip",
    description = {
      "Shows what, if anything, is lost on the way to FHIR and back.",
      "Each record is written as FHIR (JSON, XML) and as a record (JSON, YAML) and read again. What"
          + " is not as it was is reported with its path, before and after."
    },
    footer = {
      "",
      "Examples:",
      "  isopter round-trip docs/demo",
      "  isopter round-trip docs/demo/02-net-mender.yaml --as document"
    })
public final class RoundTripCommand extends InputCommand {

  @Mixin final KindOption as = new KindOption();

  @Mixin final RecordInputs forms = new RecordInputs();

  public RoundTripCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new RoundTripTask(log, as.kind()).run(inputs(forms));
  }
}
