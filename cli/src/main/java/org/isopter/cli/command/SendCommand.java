package org.isopter.cli.command;

import org.isopter.cli.exchange.SendOptions;
import org.isopter.cli.option.FhirInputs;
import org.isopter.task.exchange.SendTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Sends transactions to a FHIR server. */
@Command(
    name = "send",
    description = {
      "Sends FHIR transactions to a server.",
      "'isopter to-fhir --as transaction' makes them of records. Every entry is an update by identifier,"
          + " or a creation under a condition: what is sent again changes nothing."
    },
    footer = {
      "",
      "Examples:",
      "    isopter send target/all.ndjson --server https://host.example/fhir --dry-run",
      "    isopter send target/all.ndjson --server http://127.0.0.1:8080/fhir \\",
      "      --journal target/sent.ndjson",
      "    isopter send target/all.ndjson --server https://host.example/fhir \\",
      "      --journal target/sent.ndjson --client-id clinic --client-key key.jwk \\",
      "      --scope 'system/*.cruds'"
    })
public final class SendCommand extends InputCommand {

  @Mixin final SendOptions to = new SendOptions();
  @Mixin final FhirInputs forms = new FhirInputs();

  public SendCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new SendTask(log, to.request()).run(inputs(forms));
  }
}
