package org.isopter.cli.command;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.isopter.cli.option.HelpOption;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Mixin;

/** A command that runs one task and exits with the status of its log. */
abstract class TaskCommand implements Callable<Integer> {

  private final Streams streams;

  @Mixin final HelpOption help = new HelpOption();

  TaskCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public final Integer call() throws IOException {
    RunLog log = RunLog.on(streams);
    run(log);
    return log.status();
  }

  /** Runs the task. */
  abstract void run(RunLog log) throws IOException;
}
