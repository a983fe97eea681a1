package org.isopter.cli.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.cli.option.PoolInputs;
import org.isopter.mapper.describe.Description;
import org.isopter.mapper.describe.DescriptionPage;
import org.isopter.mapper.describe.DescriptionText;
import org.isopter.mapper.describe.Survey;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.store.PoolTables;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.AtomicFile;
import org.isopter.task.io.Streams;
import org.isopter.task.io.UnwritableException;
import org.isopter.task.io.Utf8;
import org.isopter.task.pool.TemporaryPool;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells what one looks at first of a pool, or of examinations that are not pooled yet. */
@Command(
    name = "describe",
    description = {
      "Counts what there is: per finding and eye, why there was no value, how numbers are spread,",
      "units, rules of translation, numbers far out. Reads the folder of a pool, or records and",
      "FHIR of any system."
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

  @Mixin final PoolInputs forms = new PoolInputs();

  @Mixin final ForeignOptions ways = new ForeignOptions();

  public DescribeCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  public void run(RunLog journal) {
    try {
      Path only = Path.of(inputs.get(0));
      if (inputs.size() == 1 && PoolTables.isPool(only)) {
        pool(journal, only);
      } else {
        tell(passing(journal));
      }
    } catch (FaultException refused) {
      throw misuse(refused.faults().get(0).toString());
    } catch (IOException failed) {
      throw new UnwritableException("the tables of the description", failed);
    }
  }

  private void pool(RunLog journal, Path folder) throws IOException {
    Description description;
    try {
      description = Survey.of(folder);
    } catch (IOException failed) {
      journal.unreadable(folder.toString(), failed);
      return;
    }
    tell(description);
  }

  private Description passing(RunLog journal) throws IOException {
    List<InputSource> sources = sources(journal);
    keep(sources, "--html", html);
    PoolReader reader = new PoolReader(Catalogue.standard(), ways.options(), ways.release);
    try (TemporaryPool pool = TemporaryPool.make(reader)) {
      return Survey.of(pool.fill(journal, sources), Optional.of(pool.origins()));
    }
  }

  private void tell(Description description) throws IOException {
    Utf8.write(streams.out(), "standard output", DescriptionText.of(description));
    if (html != null) {
      write(html, DescriptionPage.of(description));
    }
  }

  private static void write(Path to, String page) throws IOException {
    try (AtomicFile file = AtomicFile.at(to)) {
      file.write(page.getBytes(UTF_8));
      file.commit();
    }
  }
}
