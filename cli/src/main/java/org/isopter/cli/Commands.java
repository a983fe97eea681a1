package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.isopter.cli.command.AmendCommand;
import org.isopter.cli.command.CalculateCommand;
import org.isopter.cli.command.CatalogueCommand;
import org.isopter.cli.command.CheckCommand;
import org.isopter.cli.command.CompareCommand;
import org.isopter.cli.command.CompletionCommand;
import org.isopter.cli.command.DescribeCommand;
import org.isopter.cli.command.ExamineCommand;
import org.isopter.cli.command.FetchCommand;
import org.isopter.cli.command.FromFhirCommand;
import org.isopter.cli.command.GenerateCommand;
import org.isopter.cli.command.ListenCommand;
import org.isopter.cli.command.NoteCommand;
import org.isopter.cli.command.PoolCommand;
import org.isopter.cli.command.ProfilesCommand;
import org.isopter.cli.command.RoundTripCommand;
import org.isopter.cli.command.SendCommand;
import org.isopter.cli.command.SheetCommand;
import org.isopter.cli.command.SummaryCommand;
import org.isopter.cli.command.ToFhirCommand;
import org.isopter.cli.command.ToV2Command;
import org.isopter.cli.command.ValidateCommand;
import org.isopter.task.io.Streams;
import picocli.CommandLine;

/** The subcommands by name. */
final class Commands {

  private static final int WIDTH = 100;
  private static final Map<String, Function<Streams, Object>> ALL = all();

  private Commands() {}

  /**
   * Returns a command line that can run the arguments. To describe a subcommand costs time at every
   * start, so that only the one that is called is described.
   */
  static CommandLine line(Streams streams, String... args) {
    CommandLine line = new CommandLine(new Main());
    String first = args.length == 0 ? "" : args[0];
    List<String> needed = ALL.containsKey(first) ? List.of(first) : List.copyOf(ALL.keySet());
    ALL.forEach(
        (name, make) -> {
          if (needed.contains(name)) {
            line.addSubcommand(name, debuggable(new CommandLine(make.apply(streams))));
          }
        });
    return line.setOut(writer(streams.out()))
        .setErr(writer(streams.err()))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpWidth(WIDTH)
        .setExecutionStrategy(Commands::run)
        .setParameterExceptionHandler(ErrorHandlers::misuse)
        .setExecutionExceptionHandler(
            (mistake, at, parsed) -> ErrorHandlers.failure(mistake, at, Arrays.asList(args)));
  }

  private static int run(CommandLine.ParseResult parsed) {
    NamedFiles.refuseOneForTwo(parsed);
    return new CommandLine.RunLast().execute(parsed);
  }

  /** Lets every command show where an internal error happened. */
  private static CommandLine debuggable(CommandLine command) {
    if (!command.getCommandSpec().optionsMap().containsKey("--debug")) {
      command
          .getCommandSpec()
          .addOption(
              CommandLine.Model.OptionSpec.builder("--debug")
                  .type(boolean.class)
                  .description("Show where an internal error happened.")
                  .build());
    }
    return command;
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(stream, true, UTF_8);
  }

  private static Map<String, Function<Streams, Object>> all() {
    Map<String, Function<Streams, Object>> all = new LinkedHashMap<>();
    all.put("check", CheckCommand::new);
    all.put("note", NoteCommand::new);
    all.put("examine", ExamineCommand::new);
    all.put("amend", AmendCommand::new);
    all.put("summary", SummaryCommand::new);
    all.put("compare", CompareCommand::new);
    all.put("to-fhir", ToFhirCommand::new);
    all.put("from-fhir", FromFhirCommand::new);
    all.put("to-v2", ToV2Command::new);
    all.put("listen", ListenCommand::new);
    all.put("send", SendCommand::new);
    all.put("fetch", FetchCommand::new);
    all.put("pool", PoolCommand::new);
    all.put("describe", DescribeCommand::new);
    all.put("calculate", CalculateCommand::new);
    all.put("round-trip", RoundTripCommand::new);
    all.put("validate", ValidateCommand::new);
    all.put("catalogue", CatalogueCommand::new);
    all.put("profiles", ProfilesCommand::new);
    all.put("sheet", SheetCommand::new);
    all.put("generate", GenerateCommand::new);
    all.put("completion", streams -> new CompletionCommand(streams, () -> line(streams)));
    return all;
  }
}
