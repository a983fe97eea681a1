package org.isopter.cli.command;

import java.util.List;
import org.isopter.cli.option.RecordInputs;
import org.isopter.cli.option.StrictOption;
import org.isopter.task.convert.FormerRecords;
import org.isopter.task.exchange.ToV2Task;
import org.isopter.task.io.Streams;
import org.isopter.task.output.Target;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Turns records into messages with results. */
@Command(
    name = "to-v2",
    description = {
      "Turns records into messages with results (HL7 v2.5.1, ORU^R01, UTF-8), one of each.",
      "A message holds the facts that from-fhir reads from it as they were; what it leaves out is"
          + " named, so that nobody takes it for the whole record."
    },
    footer = {
      "",
      "Examples:",
      "  isopter to-v2 docs/demo/01-harbour-pilot.yaml --output target/01.hl7",
      "  isopter to-v2 docs/demo --output target/messages/"
    })
public final class ToV2Command extends InputCommand {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each record."
      })
  private @Nullable String output;

  @Option(
      names = "--former",
      paramLabel = "FILE|FOLDER",
      description = "The records as they were sent before; what is said no more is deleted.")
  private List<String> former = List.of();

  @Mixin final RecordInputs forms = new RecordInputs();
  @Mixin final StrictOption strict = new StrictOption();

  public ToV2Command(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    Target target = Target.of(output);
    ToV2Task task = new ToV2Task(log, target, strict.strict());
    task.after(FormerRecords.of(former, target, log)).run(inputs(forms));
  }
}
