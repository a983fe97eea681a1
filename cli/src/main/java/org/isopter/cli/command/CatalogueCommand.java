package org.isopter.cli.command;

import org.isopter.task.io.Streams;
import org.isopter.task.page.CatalogueTask;
import org.isopter.task.page.PageForm;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows the findings. */
@Command(
    name = "catalogue",
    description = {
      "Shows the findings that a record may hold: codes, sites, values, units, methods, sources.",
      "A range is what may be recorded; it is no normal range.",
      "With --foreign, the rules by which from-fhir takes what other systems wrote, each with why it"
          + " is safe, what it takes, and what looks alike and is not taken."
    },
    footer = {
      "",
      "Examples:",
      "  isopter catalogue intraocular-pressure",
      "  isopter catalogue --format json",
      "  isopter catalogue --foreign acuity-ratio"
    })
public final class CatalogueCommand extends TaskCommand {

  @Parameters(arity = "0..1", paramLabel = "NAME", description = "Only this one, in full.")
  private @Nullable String name;

  @Option(names = "--foreign", description = "Show the rules for FHIR of other systems.")
  private boolean foreign;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "How to show it: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private PageForm format = PageForm.TEXT;

  public CatalogueCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new CatalogueTask(log, format).show(foreign, name);
  }
}
