package org.isopter.cli;

import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.Intake;
import org.isopter.mapper.foreign.Limits;
import org.isopter.mapper.foreign.Options;
import org.isopter.mapper.foreign.Policy;
import org.isopter.mapper.foreign.Receiver;
import org.isopter.mapper.foreign.Together;
import org.isopter.model.catalogue.Catalogue;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How FHIR of any system is to be read. */
final class ForeignInputs {

  @Mixin final ForeignWays ways = new ForeignWays();

  @Option(
      names = "--policy",
      paramLabel = "POLICY",
      defaultValue = "faithful",
      description = {
        "What to do with what no rule takes: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "strict refuses the input, faithful tells it and keeps it beside the record, extract tells"
            + " it and lets it go."
      })
  Policy policy = Policy.FAITHFUL;

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
  Together together = Together.FOLDER;

  @Option(
      names = "--largest",
      paramLabel = "MB",
      defaultValue = "64",
      description = "Refuse a document larger than this (default: ${DEFAULT-VALUE}).")
  int largest = 64;

  Options options() {
    Limits usual = Limits.USUAL;
    return ways.options(new Limits(usual.depth(), usual.stringLength(), bytes()));
  }

  /** Returns the most bytes of a document. */
  int bytes() {
    return (int) Math.min(Math.max(1, largest) * 1_000_000L, Integer.MAX_VALUE - 8);
  }

  Intake intake(Receiver receiver) {
    ForeignReader reader = new ForeignReader(Catalogue.standard(), options());
    return Intake.of(reader, ways.release, together, receiver);
  }

  /** Returns everything that decides about the outcome, in words. */
  String asked() {
    Options options = options();
    return "%s, %s, zone %s, window %s, %d MB, together %s"
        .formatted(ways.release, policy, options.zone(), options.window(), largest, together);
  }
}
