package org.isopter.cli.command;

import java.nio.file.Path;
import org.isopter.cli.option.RecordInputs;
import org.isopter.task.check.CheckTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.CheckForm;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks records. */
@Command(
    name = "check",
    description = {
      "Checks records and reports every fault: where it stands, what was seen and what is wanted.",
      "A record that can be read is held against the consistency rules (docs/rules.md); only their",
      "errors refuse it. That nothing is reported says nothing about the health of an eye."
    },
    footer = {
      "",
      "Examples:",
      "  isopter check docs/demo/01-harbour-pilot.yaml",
      "  isopter check docs/demo --format sarif"
    })
public final class CheckCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description =
          "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}); json is an OperationOutcome a line.")
  CheckForm format = CheckForm.TEXT;

  @Option(
      names = "--suppress",
      paramLabel = "FILE",
      description = "Leave out what FILE knows: a YAML list of { rule, reason, file, path }.")
  @Nullable Path suppress;

  @Mixin final RecordInputs forms = new RecordInputs();

  public CheckCommand(Streams streams) {
    super(streams);
  }

  @Override
  IssueSink issues() {
    return format.on(streams.out());
  }

  @Override
  void run(RunLog log) {
    new CheckTask(log, suppress).run(inputs(forms));
  }
}
