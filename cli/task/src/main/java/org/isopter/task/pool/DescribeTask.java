package org.isopter.task.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.describe.Description;
import org.isopter.mapper.describe.DescriptionPage;
import org.isopter.mapper.describe.DescriptionText;
import org.isopter.mapper.describe.Survey;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
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

  /**
   * Makes a task.
   *
   * @param reader reads what is not pooled yet
   * @param html a file for the same as a page with pictures; null for none
   */
  public DescribeTask(RunLog log, PoolReader reader, @Nullable Path html) {
    this.log = log;
    this.reader = reader;
    this.html = html;
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

  private void pool(Path folder) throws IOException {
    Description description;
    try {
      description = Survey.of(folder);
    } catch (IOException failed) {
      log.unreadable(folder.toString(), failed);
      return;
    }
    write(description);
  }

  private Description unpooled(Inputs inputs) throws IOException {
    List<InputSource> sources = inputs.find(log);
    Inputs.refuseToOverwrite(sources, "--html", html);
    try (TemporaryPool pool = TemporaryPool.make(reader)) {
      return Survey.of(pool.fill(log, sources), Optional.of(pool.origins()));
    }
  }

  private void write(Description description) {
    Utf8.write(log.data(), "standard output", DescriptionText.of(description));
    if (html != null) {
      AtomicFile.write(html, DescriptionPage.of(description));
    }
  }
}
