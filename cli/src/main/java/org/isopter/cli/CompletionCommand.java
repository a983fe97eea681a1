package org.isopter.cli;

import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Prints the shell's completion script. */
@Command(
    name = "completion",
    description = "Prints a script with which bash and zsh complete the command line.",
    footer = {"", "Examples:", "  source <(isopter completion)"})
final class CompletionCommand implements Callable<Integer> {

  private final Streams streams;
  private final Supplier<CommandLine> whole;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  CompletionCommand(Streams streams, Supplier<CommandLine> whole) {
    this.streams = streams;
    this.whole = whole;
  }

  @Override
  public Integer call() {
    streams.out().print(AutoComplete.bash("isopter", whole.get()));
    return ExitStatus.OK;
  }
}
