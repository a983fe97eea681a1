package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.isopter.cli.option.HelpOption;
import org.isopter.cli.option.InputOptions;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.Inputs;
import org.isopter.task.io.Streams;
import org.isopter.task.report.FileReport;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.IssueText;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Mixin;

/** A command that reads files. */
abstract class InputCommand implements Callable<Integer> {

  final Streams streams;

  @Mixin final InputOptions options = new InputOptions();
  @Mixin final HelpOption help = new HelpOption();

  InputCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public final Integer call() {
    return FileReport.with(report(), this::run);
  }

  private int run(IssueSink report) {
    IssueSink issues = issues();
    RunLog log = new RunLog(streams, issues, report, options.isDebug());
    run(log);
    issues.finish();
    return log.status();
  }

  /** Returns the file of OperationOutcomes; empty where none is asked for or the work writes it. */
  Optional<Path> report() {
    return Optional.ofNullable(options.report());
  }

  /** Does the work. */
  abstract void run(RunLog log);

  /** Returns where issues of documents are written: as words, unless they are the data. */
  IssueSink issues() {
    return new IssueText(streams.err());
  }

  final Inputs inputs(InputForms forms) {
    return options.inputs(forms, streams.in());
  }
}
