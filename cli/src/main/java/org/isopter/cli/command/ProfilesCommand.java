package org.isopter.cli.command;

import java.nio.file.Path;
import org.isopter.task.io.Streams;
import org.isopter.task.output.PackageFile;
import org.isopter.task.report.RunLog;
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
public final class ProfilesCommand extends TaskCommand {

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR|FILE.tgz",
      description = "Where to write: a file that ends in .tgz, or a folder for package.tgz.")
  private Path output = Path.of("");

  public ProfilesCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    Path written = PackageFile.write(output);
    log.say("FHIR package written to " + written);
  }
}
