package org.isopter.cli.command;

import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.isopter.cli.option.HelpOption;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Prints the shell's completion script. */
@Command(
    name = "completion",
    description = "Prints a script with which bash and zsh complete the command line.",
    footer = {"", "Examples:", "  source <(isopter completion)"})
public final class CompletionCommand implements Callable<Integer> {

  private final Streams streams;
  private final Supplier<CommandLine> whole;

  @Mixin final HelpOption help = new HelpOption();

  public CompletionCommand(Streams streams, Supplier<CommandLine> whole) {
    this.streams = streams;
    this.whole = whole;
  }

  @Override
  public Integer call() {
    streams.out().print(AutoComplete.bash("isopter", whole.get()));
    return ExitStatus.OK;
  }
}
