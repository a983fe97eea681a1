package org.isopter.cli.option;

import java.util.List;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.task.report.UsageException;
import picocli.CommandLine.Option;

/** How small groups of persons are found in a pool, and what becomes of them. */
public final class RiskOptions {

  @Option(
      names = "--trait",
      paramLabel = "COLUMN",
      split = ",",
      description = "Columns by which a person might be known (default: age,sex,setting).")
  private List<String> traits = PoolPlan.USUAL_TRAITS;

  @Option(
      names = "--small-cell",
      paramLabel = "N",
      defaultValue = "5",
      description = "List groups of traits that fewer than N persons share (default: 5).")
  private int smallCell = PoolPlan.USUAL_SMALLEST;

  @Option(
      names = "--suppress",
      description = {
        "Put ages into bands, and take persons out who share their traits with fewer",
        "than the persons of a small cell."
      })
  private boolean suppress;

  /**
   * Returns a plan with these limits.
   *
   * @throws UsageException when no person is a small cell
   */
  PoolPlan in(PoolPlan plan) {
    if (smallCell < 1) {
      throw new UsageException("--small-cell " + smallCell + ": wanted a number from 1 on");
    }
    return plan.risk(smallCell, traits, suppress);
  }

  /**
   * Returns a plan with bundles of every examination.
   *
   * @throws UsageException when persons are taken out too
   */
  PoolPlan withBundles(PoolPlan plan) {
    if (suppress) {
      throw new UsageException(
          "--suppress with --bundles: bundles are written before persons can be counted");
    }
    return plan.withBundles();
  }
}
