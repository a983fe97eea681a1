package org.isopter.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.cli.option.HabitsOption;
import org.isopter.cli.option.HeaderOptions;
import org.isopter.task.io.Streams;
import org.isopter.task.note.ExamineTask;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Goes through an examination step by step. */
@Command(
    name = "examine",
    description = {
      "Goes through an examination in its usual order and writes record, letter and bundle.",
      "One line for each step, in shorthand: n is normal (the line says what that records), x not",
      "done and perhaps why (x refused), b back, an empty line the next step, ? shows all keys. An",
      "empty line behind the last step ends it. After every step a draft keeps what was entered,",
      "and the next run goes on there. Where --subject is not given, it is asked for."
    },
    footer = {
      "",
      "Examples:",
      "  isopter examine --subject p-1 --output target/n --replace --typed docs/normal-examination.txt"
    })
public final class ExamineCommand extends TaskCommand {
  @Mixin private final HeaderOptions header = new HeaderOptions();
  @Mixin private final HabitsOption habits = new HabitsOption();

  @Option(
      names = "--output",
      required = true,
      paramLabel = "NAME",
      description = "Where to write: NAME.yaml, NAME.txt and NAME.json; the draft is NAME.draft.")
  private Path output = Path.of("");

  @Option(
      names = "--typed",
      paramLabel = "FILE",
      description = "Take the answers from a file, a line for each step (default: the terminal).")
  private @Nullable Path typed;

  @Option(names = "--replace", description = "Write over what is there under that name.")
  private boolean replace;

  public ExamineCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) throws IOException {
    new ExamineTask(log, header.examine(habits.habits(), output, replace))
        .run(Optional.ofNullable(typed));
  }
}
