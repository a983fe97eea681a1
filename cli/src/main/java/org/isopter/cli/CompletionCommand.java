package org.isopter.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Prints the shell's completion script. */
@Command(
    name = "completion",
    description = "Prints a script with which bash and zsh complete the command line.",
    footer = {"", "Examples:", "  source <(isopter completion)"})
final class CompletionCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  CompletionCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    streams.out().print(AutoComplete.bash("isopter", Commands.line(streams)));
    return ExitStatus.OK;
  }
}
