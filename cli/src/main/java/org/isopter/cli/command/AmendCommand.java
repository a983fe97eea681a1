package org.isopter.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import org.isopter.cli.option.HabitsOption;
import org.isopter.cli.option.IdOption;
import org.isopter.task.io.Streams;
import org.isopter.task.note.AmendTask;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Amends a record by shorthand. */
@Command(
    name = "amend",
    description = {
      "Amends a record by shorthand: a new record that names the old one.",
      "What the note says takes the place of what the record says of the same measurement, and is"
          + " added where there is none. The old record stays as it is."
    },
    footer = {
      "",
      "Examples:",
      "  isopter amend docs/demo/02-net-mender.yaml 'IOP R 15 GAT' --id e-2"
    })
public final class AmendCommand extends TaskCommand {

  @Parameters(index = "0", paramLabel = "RECORD", description = "The record to amend.")
  private Path record = Path.of("");

  @Parameters(index = "1", paramLabel = "TEXT", description = "What is to be changed or added.")
  private String text = "";

  @Mixin private final IdOption id = new IdOption();
  @Mixin private final HabitsOption habits = new HabitsOption();

  public AmendCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) throws IOException {
    new AmendTask(log, id.id(), habits.habits()).run(record, text);
  }
}
