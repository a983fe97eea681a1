package org.isopter.cli.command;

import org.isopter.cli.option.GenerateOptions;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Writes examinations of invented persons. */
@Command(
    name = "generate",
    description = {
      "Writes examinations of invented persons, one a line: for tests, demonstrations and load.",
      "The persons do not exist, and nothing in it may be taken as epidemiology.",
      "The same seed writes the same lines: person by person, each from the first visit on."
    },
    footer = {
      "",
      "Examples:",
      "  isopter generate --persons 3 --seed 7",
      "  isopter generate --persons 100 --seed 7 --output target/invented.ndjson",
      "  isopter generate --persons 100 --format fhir-ndjson --output target/invented-fhir.ndjson"
    })
public final class GenerateCommand extends TaskCommand {

  @Mixin private final GenerateOptions options = new GenerateOptions();

  public GenerateCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    options.run(log);
  }
}
