package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.task.input.InputForm;
import org.isopter.task.note.NoteRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a note is turned into. */
public final class NoteOptions {

  @Mixin private final HeaderOptions header = new HeaderOptions();
  @Mixin private final HabitsOption habits = new HabitsOption();

  @Option(
      names = "--keep-unread",
      description = "Keep what is not understood as a remark on the examination, word for word.")
  private boolean keepUnread;

  @Option(
      names = "--questions",
      paramLabel = "FILE",
      description = "Write what is not clear as questions with numbered readings, as JSON.")
  private @Nullable Path questions;

  @Option(
      names = "--answers",
      paramLabel = "FILE",
      description = "The answers: a JSON list of objects with item and answer, a number.")
  private @Nullable Path answers;

  @Option(
      names = "--into",
      paramLabel = "RECORD",
      description =
          "Add to this record of the same person, who need not be named again; what contradicts it"
              + " is refused.")
  private @Nullable Path into;

  @Option(names = "--summary", description = "Print the letter too, behind the record.")
  private boolean summary;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      converter = FormWord.OfRecords.class,
      completionCandidates = FormWord.OfRecords.class,
      defaultValue = "yaml",
      description = "Form of the record: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private InputForm format = InputForm.YAML;

  /** Returns what is asked for. */
  public NoteRequest request() {
    return new NoteRequest(
        into == null ? header.header(habits.habits()) : header.into(into, habits.habits()),
        habits.habits(),
        keepUnread,
        Optional.ofNullable(questions),
        Optional.ofNullable(answers),
        Optional.ofNullable(into),
        format,
        summary);
  }
}
