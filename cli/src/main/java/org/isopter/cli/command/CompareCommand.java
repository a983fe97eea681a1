package org.isopter.cli.command;

import org.isopter.cli.option.RecordInputs;
import org.isopter.task.io.Streams;
import org.isopter.task.page.CompareForm;
import org.isopter.task.page.CompareTask;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Compares the examinations of one person. */
@Command(
    name = "compare",
    description = {
      "Says what changed between the records of one person, eye by eye.",
      "Two files, or a folder with the records of one person; they are put in order of time."
    },
    footer = {
      "",
      "Examples:",
      "  isopter compare docs/demo/04-rope-maker.yaml"
          + " docs/demo/05-rope-maker-three-months-later.json",
      "  isopter compare docs/demo/04-rope-maker.yaml"
          + " docs/demo/05-rope-maker-three-months-later.json --format html"
    })
public final class CompareCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to report: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is one object a line, for each pair; html a page with pictures over time."
      })
  CompareForm format = CompareForm.TEXT;

  @Option(names = "--all", description = "Report what stayed the same too.")
  boolean all;

  @Mixin final RecordInputs forms = new RecordInputs();

  public CompareCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new CompareTask(log, format, all).run(inputs(forms));
  }
}
