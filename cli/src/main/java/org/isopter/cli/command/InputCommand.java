package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.InputSources;
import org.isopter.task.io.RealPath;
import org.isopter.task.io.Streams;
import org.isopter.task.report.FileReport;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.IssueText;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What the commands that read files have in common. */
abstract class InputCommand implements Callable<Integer> {

  @Spec CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE|FOLDER|-",
      description = "Files, folders (with all below them), '*.json', or - for standard input.")
  List<String> inputs = List.of();

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description = "Write what is told of the inputs to FILE too: a FHIR OperationOutcome a line.")
  @Nullable Path report;

  @Option(names = "--debug", description = "Show where an internal error happened.")
  boolean debug;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  final Streams streams;

  /** Made with the streams; picocli sets the rest. */
  @SuppressWarnings("NullAway.Init")
  public InputCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public final Integer call() {
    if (report == null || writesReport()) {
      return run(IssueSink.NOBODY);
    }
    try (FileReport file = new FileReport(report)) {
      int status = run(file);
      file.commit();
      return status;
    }
  }

  private int run(IssueSink reported) {
    IssueSink told = told();
    RunLog journal = new RunLog(streams, told, reported, debug);
    run(journal);
    told.finish();
    return journal.status();
  }

  /** Says whether the work itself writes the report. */
  boolean writesReport() {
    return false;
  }

  /** Does the work. */
  public abstract void run(RunLog journal);

  /** Returns where issues are told of: as words, unless they are the command's data. */
  IssueSink told() {
    return new IssueText(streams.err());
  }

  /** Returns the forms that the command reads. */
  abstract InputForms forms();

  final List<InputSource> sources(RunLog journal) {
    List<InputSource> found =
        new InputSources(forms().accepted(), forms().stated(), streams.in(), journal).find(inputs);
    keep(found, "--report", report);
    return found;
  }

  /** Refuses a file to write that is one of the inputs. */
  final void keep(List<InputSource> sources, String option, @Nullable Object file) {
    if (file == null) {
      return;
    }
    Path target = RealPath.of(Path.of(file.toString()));
    if (sources.stream()
        .flatMap(source -> source.file().stream())
        .anyMatch(input -> RealPath.of(input).equals(target))) {
      throw misuse(option + " " + file + " is an input, which is never written over");
    }
  }

  final ParameterException misuse(String text) {
    return new ParameterException(spec.commandLine(), text);
  }
}
