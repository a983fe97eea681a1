package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.isopter.task.io.Streams;
import org.isopter.task.page.SheetPage;
import org.isopter.task.report.ExitStatus;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes the examination sheet for a browser. */
@Command(
    name = "sheet",
    description = {
      "Writes the examination sheet: one page for a browser, without network or server.",
      "What is typed is read as by the command note, and the record is saved as a file."
    },
    footer = {"", "Examples:", "    isopter sheet --output target/sheet.html"})
public final class SheetCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "FILE",
      description = "Where to write the page.")
  private Path output = Path.of("");

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  public SheetCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    SheetPage.write(output);
    streams.err().println("isopter: sheet written to " + output);
    return ExitStatus.OK;
  }
}
