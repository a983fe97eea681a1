package org.isopter.cli.command;

import org.isopter.cli.option.ForeignOptions;
import org.isopter.cli.option.PoolInputs;
import org.isopter.cli.option.PoolOptions;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lays examinations out as research tables. */
@Command(
    name = "pool",
    description = {
      "Lays records and FHIR of any system out as tables for research, with a codebook.",
      "Identities are taken out: pseudonyms by a secret key, all dates of a person moved alike,",
      "no names, no instruments, no free text. What could not be read is listed with reasons."
    },
    footer = {
      "",
      "Examples:",
      "  isopter pool docs/demo --key-file docs/key-for-the-demo.txt -o target/pool --replace",
      "  isopter pool docs/demo --identified --format csv -o target/known --replace",
      "",
      "A rare finding or course may still be known again: who may see the tables is for local rules."
    })
public final class PoolCommand extends InputCommand {

  @Mixin final PoolOptions pool = new PoolOptions();
  @Mixin final PoolInputs forms = new PoolInputs();

  @Mixin final ForeignOptions ways = new ForeignOptions();

  public PoolCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    pool.task(log, ways.reader()).run(inputs(forms));
  }
}
