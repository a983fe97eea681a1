package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.cli.exchange.ServerOptions;
import org.isopter.task.exchange.FetchRequest;
import org.isopter.task.exchange.FetchTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fetches what a FHIR server holds. */
@Command(
    name = "fetch",
    description = {
      "Fetches what a FHIR server answers: searches, all of a patient, exports.",
      "The lines that it writes are read by 'isopter from-fhir --together all'."
    },
    footer = {
      "",
      "Examples:",
      "    isopter fetch 'Observation?_count=200' --server http://127.0.0.1:8080/fhir \\",
      "      --output target/fetched.ndjson",
      "    isopter fetch 'Patient/7/$everything' --server https://host.example/fhir \\",
      "      --token-file token --output target/patient.ndjson",
      "    isopter fetch '$export?_type=Observation' --server https://host.example/fhir \\",
      "      --client-id clinic --client-key key.jwk --scope 'system/*.rs' \\",
      "      --output target/export.ndjson"
    })
public final class FetchCommand extends TaskCommand {

  @Parameters(
      arity = "1..*",
      paramLabel = "REQUEST",
      description = "What to ask for, below the address of the server, as FHIR writes it.")
  private List<String> requests = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where to write lines of JSON; standard output unless given.")
  private @Nullable Path output;

  @Mixin final ServerOptions server = new ServerOptions();

  public FetchCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new FetchTask(log, new FetchRequest(server.access(), requests, Optional.ofNullable(output)))
        .run();
  }
}
