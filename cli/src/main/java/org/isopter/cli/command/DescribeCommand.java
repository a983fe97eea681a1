package org.isopter.cli.command;

import java.nio.file.Path;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.cli.option.PoolInputs;
import org.isopter.cli.option.StrictOption;
import org.isopter.task.io.Streams;
import org.isopter.task.pool.DescribeTask;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells what one looks at first of a pool, or of examinations that are not pooled yet. */
@Command(
    name = "describe",
    description = {
      "Counts what there is in a pool, in records or in FHIR of any system.",
      "Per finding and eye: why there was no value, how numbers are spread, units, far out."
    },
    footer = {
      "",
      "Examples:",
      "  isopter describe docs/demo",
      "  isopter describe docs/demo --html target/demo.html",
      "",
      "Counts are for those who know the data: they are no result, and no advice on any person."
    })
public final class DescribeCommand extends InputCommand {

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description = "Write it as a page with pictures, which needs nothing else.")
  @Nullable Path html;

  @Option(
      names = "--small-cell",
      defaultValue = "1",
      paramLabel = "N",
      description = "Say nothing of fewer than N persons; round counts to N (default: 1, all).")
  int smallCell = 1;

  @Mixin final PoolInputs forms = new PoolInputs();
  @Mixin final StrictOption strict = new StrictOption();
  @Mixin final ForeignOptions ways = new ForeignOptions();

  public DescribeCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new DescribeTask(log, ways.reader(), html)
        .strict(strict.strict())
        .coarse(smallCell)
        .run(inputs(forms));
  }
}
