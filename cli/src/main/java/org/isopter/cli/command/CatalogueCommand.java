package org.isopter.cli.command;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.isopter.mapper.foreign.vocabulary.ForeignRule;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.task.io.Streams;
import org.isopter.task.page.FindingChoice;
import org.isopter.task.page.PageForm;
import org.isopter.task.page.RulePages;
import org.isopter.task.report.ExitStatus;
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
      "  isopter catalogue",
      "  isopter catalogue intraocular-pressure",
      "  isopter catalogue --format json",
      "  isopter catalogue --foreign",
      "  isopter catalogue --foreign acuity-ratio"
    })
public final class CatalogueCommand implements Callable<Integer> {

  private final Streams streams;

  @Parameters(
      arity = "0..1",
      paramLabel = "NAME",
      description = "Only this finding or rule, in full.")
  private @Nullable String name;

  @Option(names = "--foreign", description = "Show the rules for FHIR of other systems.")
  private boolean foreign;

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

  public CatalogueCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    return foreign ? rules() : findings();
  }

  private int rules() {
    Optional<List<ForeignRule>> chosen = RulePages.of(name);
    chosen.ifPresentOrElse(
        rules -> streams.out().print(RulePages.page(rules, format)),
        () -> streams.err().println("isopter: " + RulePages.unknown(name)));
    return chosen.isPresent() ? ExitStatus.OK : ExitStatus.USAGE;
  }

  private int findings() {
    Optional<List<Finding<?>>> chosen = FindingChoice.of(Catalogue.standard(), name);
    if (chosen.isEmpty()) {
      streams.err().println("isopter: " + FindingChoice.unknown(Catalogue.standard(), name));
      return ExitStatus.USAGE;
    }
    streams.out().print(format.page(chosen.get()));
    return ExitStatus.OK;
  }
}
