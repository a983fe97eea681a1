package org.isopter.cli.command;

import org.isopter.cli.option.RecordInputs;
import org.isopter.cli.option.SummaryOptions;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Puts records into plain words. */
@Command(
    name = "summary",
    description = {
      "Puts a record into plain words, one page to go with a referral letter.",
      "Both eyes side by side, what was not done and why, what is not recorded, and apart from that",
      "what follows."
    },
    footer = {
      "",
      "Examples:",
      "  isopter summary docs/demo/02-net-mender.yaml",
      "  isopter summary docs/demo/02-net-mender.yaml --format markdown",
      "  isopter summary docs/demo/02-net-mender.yaml --format pdf --output target/letters",
      "  isopter summary docs/demo/02-net-mender.yaml --detail",
      "  isopter summary docs/demo/07-bell-founder.yaml --urgency-hints uk-c205"
    })
public final class SummaryCommand extends InputCommand {

  @Mixin final SummaryOptions page = new SummaryOptions();
  @Mixin final RecordInputs forms = new RecordInputs();

  public SummaryCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    page.task(log).run(inputs(forms));
  }
}
