package org.isopter.cli.command;

import org.isopter.cli.option.RecordInputs;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForms;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import org.isopter.task.roundtrip.RoundTrip;
import org.isopter.task.roundtrip.RoundTripText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows that nothing is lost on the way to FHIR and back. */
@Command(
    name = "round-trip",
    description = {
      "Shows what, if anything, is lost on the way to FHIR and back.",
      "Each record is written as FHIR (JSON, XML) and as a record (JSON, YAML) and read again. What"
          + " is not as it was is told with its path, before and after."
    },
    footer = {
      "",
      "Examples:",
      "  isopter round-trip docs/demo",
      "  isopter round-trip docs/demo/02-net-mender.yaml --as document"
    })
public final class RoundTripCommand extends InputCommand {

  @Option(
      names = "--as",
      paramLabel = "KIND",
      defaultValue = "collection",
      description = "Kind of bundle: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  BundleKind kind = BundleKind.COLLECTION;

  @Mixin final RecordInputs forms = new RecordInputs();

  public RoundTripCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  public void run(RunLog journal) {
    RoundTripText text = new RoundTripText(streams.out(), journal, new RoundTrip(kind));
    new InputDocuments(journal).each(sources(journal), text::tell);
    text.sum();
  }
}
