package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.isopter.task.io.Streams;
import org.isopter.task.output.PackageFile;
import org.isopter.task.report.ExitStatus;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes the FHIR package. */
@Command(
    name = "profiles",
    description = "Writes the FHIR package: profiles, value sets, code systems, views, examples.",
    footer = {
      "",
      "Examples:",
      "  isopter profiles --output target/",
      "  isopter profiles --output target/isopter.tgz"
    })
public final class ProfilesCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR|FILE.tgz",
      description = "Where to write: a file that ends in .tgz, or a folder for package.tgz.")
  private Path output = Path.of("");

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  public ProfilesCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    Path written = PackageFile.write(output);
    streams.err().println("isopter: FHIR package written to " + written);
    return ExitStatus.OK;
  }
}
