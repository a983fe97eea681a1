package org.isopter.cli.option;

import java.util.Optional;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.task.convert.ReadingOptions;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How FHIR of any system is to be read. */
public final class PolicyOptions {

  @Mixin final ForeignOptions ways = new ForeignOptions();

  @Option(
      names = "--policy",
      paramLabel = "POLICY",
      defaultValue = "faithful",
      description = {
        "What to do with what no rule takes: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "strict refuses the input, faithful reports it and keeps it beside the record, extract reports"
            + " it and lets it go."
      })
  public Policy policy = Policy.FAITHFUL;

  @Option(
      names = "--together",
      paramLabel = "WHAT",
      defaultValue = "folder",
      description = {
        "What is read together, so that one may refer to another: ${COMPLETION-CANDIDATES}"
            + " (default: ${DEFAULT-VALUE}).",
        "folder: the single resources of a folder, or of a block of 2,000 lines; each bundle by"
            + " itself. all: everything, held in memory. none: each file and line by itself."
      })
  public Together together = Together.FOLDER;

  @Option(
      names = "--largest",
      paramLabel = "MB",
      defaultValue = "64",
      description = "Refuse a document larger than this (default: ${DEFAULT-VALUE}).")
  int largest = 64;

  /** Returns how to read. */
  public ReadingOptions reading() {
    return new ReadingOptions(
        ways.release,
        Optional.ofNullable(ways.zone),
        ways.window(),
        policy,
        together,
        largest,
        Optional.ofNullable(ways.performed),
        ways.aliases);
  }
}
