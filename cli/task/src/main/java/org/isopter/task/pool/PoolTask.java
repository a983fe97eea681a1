package org.isopter.task.pool;

import java.io.IOException;
import java.util.List;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.pool.OnErrors;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Lays records and FHIR of any system out as tables for research. */
public final class PoolTask {

  private final RunLog log;
  private final PoolReader reader;
  private final PoolPlan plan;
  private final PoolRequest request;

  /**
   * Makes a task.
   *
   * @param reader reads the inputs
   */
  public PoolTask(RunLog log, PoolReader reader, PoolRequest request) {
    this.log = log;
    this.reader = reader;
    this.request = request;
    this.plan = request.plan();
  }

  /**
   * Pools every input; what is refused or left over is counted, and listed beside the tables.
   *
   * @throws UsageException when the folder or a private file would overwrite something
   * @throws UnwritableException when the tables cannot be written
   */
  public void run(Inputs inputs) {
    List<InputSource> sources = inputs.find(log);
    if (sources.isEmpty() && log.status() != ExitStatus.OK) {
      log.say("no input was found: nothing was written to " + plan.folder());
      return;
    }
    new PoolPlaces(plan)
        .clash(sources)
        .ifPresent(
            fault -> {
              throw new UsageException(fault.toString());
            });
    LeftOverReport left = new LeftOverReport(log, sources);
    RecordErrors errors = new RecordErrors(log, request.strict()).withoutValues();
    try (Progress progress = Progress.on(log.streams(), "documents");
        PoolRun run =
            PoolRun.begin(Catalogue.standard(), reader.on(policy()), plan)
                .knowing(request.persons())
                .rotatedFrom(request.older())
                .reporting(left::list)
                .naming(
                    one -> errors.name(left.position(one.source(), one.line()), one.errors()))) {
      new PoolFeed(run.telling(progress::at), InputSource::name).feed(log, sources);
      PoolResult result = run.finish();
      progress.end();
      errors.sum();
      new PoolReport(log).tell(result, request.persons(), plan.folder());
    } catch (FaultException refused) {
      throw new UsageException(refused.faults().get(0).toString());
    } catch (IOException failed) {
      throw new UnwritableException(plan.folder().toString(), failed);
    }
  }

  private OnErrors policy() {
    return request.strict() ? OnErrors.LEFT_OVER : OnErrors.POOLED;
  }
}
