package org.isopter.task.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.describe.Coarse;
import org.isopter.mapper.describe.Description;
import org.isopter.mapper.describe.DescriptionPage;
import org.isopter.mapper.describe.DescriptionText;
import org.isopter.mapper.describe.Survey;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.pool.OnErrors;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.store.PoolTables;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;

/** Counts what a pool holds, or records and FHIR that are not pooled yet. */
public final class DescribeTask {

  private final RunLog log;
  private final PoolReader reader;
  private final @Nullable Path html;
  private final boolean strict;
  private final Coarse coarse;

  /**
   * Makes a task, for which examinations with errors by the rules count like others.
   *
   * @param reader reads what is not pooled yet
   * @param html a file for the same as a page with pictures; null for none
   */
  public DescribeTask(RunLog log, PoolReader reader, @Nullable Path html) {
    this(log, reader, html, false, Coarse.NOT);
  }

  private DescribeTask(
      RunLog log, PoolReader reader, @Nullable Path html, boolean strict, Coarse coarse) {
    this.log = log;
    this.reader = reader;
    this.html = html;
    this.strict = strict;
    this.coarse = coarse;
  }

  /**
   * Returns this task, refusing examinations with errors by the rules where that is wanted. A pool
   * that is there already is described as it was made.
   */
  public DescribeTask strict(boolean wanted) {
    return new DescribeTask(log, reader, html, wanted, coarse);
  }

  /**
   * Returns this task, saying nothing of fewer persons than these.
   *
   * @throws UsageException when they are none
   */
  public DescribeTask coarse(int smallCell) {
    if (smallCell < 1) {
      throw new UsageException("--small-cell " + smallCell + ": wanted a number from 1 on");
    }
    return new DescribeTask(log, reader, html, strict, new Coarse(smallCell));
  }

  /**
   * Writes the counts.
   *
   * @throws UsageException when the inputs cannot be described
   * @throws UnwritableException when the counts or the page cannot be written
   */
  public void run(Inputs inputs) {
    try {
      Path only = Path.of(inputs.names().get(0));
      if (inputs.names().size() == 1 && PoolTables.isPool(only)) {
        refuseStrict();
        pool(only);
      } else {
        write(unpooled(inputs));
      }
    } catch (FaultException refused) {
      throw new UsageException(refused.faults().get(0).toString());
    } catch (IOException failed) {
      throw new UnwritableException("the tables of the description", failed);
    }
  }

  private void refuseStrict() {
    if (strict) {
      throw new UsageException(
          "--strict is for what is not pooled yet: say it to 'isopter pool', which made these tables");
    }
  }

  private void pool(Path folder) throws IOException {
    Description description;
    try {
      description = Survey.of(folder, Optional.empty(), coarse);
    } catch (IOException failed) {
      log.unreadable(folder.toString(), failed);
      return;
    }
    write(description);
  }

  private Description unpooled(Inputs inputs) throws IOException {
    List<InputSource> sources = inputs.find(log);
    Inputs.refuseToOverwrite(sources, "--html", html);
    PoolReader all = strict ? reader.on(OnErrors.LEFT_OVER) : reader;
    try (TemporaryPool pool = TemporaryPool.make(all)) {
      return Survey.of(pool.fill(log, sources), Optional.of(pool.origins()), coarse);
    }
  }

  private void write(Description description) {
    Utf8.write(log.data(), "standard output", DescriptionText.of(description));
    if (html != null) {
      AtomicFile.write(html, DescriptionPage.of(description));
    }
  }
}
