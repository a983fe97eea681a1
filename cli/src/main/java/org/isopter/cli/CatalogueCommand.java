package org.isopter.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.shape.Finding;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows the findings. */
@Command(
    name = "catalogue",
    description = {
      "Shows the findings that a record may hold: codes, sites, values, units, methods, sources.",
      "A range is what may be recorded; it is no normal range."
    },
    footer = {
      "",
      "Examples:",
      "  isopter catalogue",
      "  isopter catalogue intraocular-pressure",
      "  isopter catalogue --format json"
    })
final class CatalogueCommand implements Callable<Integer> {

  private final Streams streams;

  @Parameters(arity = "0..1", paramLabel = "FINDING", description = "Only this finding, in full.")
  private @Nullable String name;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "How to show it: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private PageForm format = PageForm.TEXT;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  CatalogueCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    Optional<List<Finding<?>>> chosen = FindingChoice.of(Catalogue.standard(), name);
    if (chosen.isEmpty()) {
      streams.err().println("isopter: " + FindingChoice.unknown(Catalogue.standard(), name));
      return ExitStatus.USAGE;
    }
    streams.out().print(format.page(chosen.get()));
    return ExitStatus.OK;
  }
}
