package org.isopter.cli.command;

import java.io.IOException;
import org.isopter.cli.option.NoteOptions;
import org.isopter.task.io.Streams;
import org.isopter.task.note.NoteTask;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Turns bedside shorthand into a record. */
@Command(
    name = "note",
    description = {
      "Turns bedside shorthand into a record.",
      "An item that is not understood to the last word is reported with its place, and nothing is"
          + " written; --keep-unread keeps such items as a remark."
    },
    footer = {
      "",
      "Examples:",
      "  isopter note 'IOP R 14 L 15' --id n-1 --subject p-1 --performed 2026-03-03T09:10:00Z"
    })
public final class NoteCommand extends TaskCommand {

  @Parameters(
      arity = "1",
      paramLabel = "TEXT|FILE|-",
      description = "The note, a file that holds it, or - for standard input.")
  private String note = "";

  @Mixin private final NoteOptions to = new NoteOptions();

  public NoteCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) throws IOException {
    new NoteTask(log, to.request()).run(note);
  }
}
