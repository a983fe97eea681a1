package org.isopter.cli.option;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.model.exam.Header;
import org.isopter.model.note.habit.Habits;
import org.isopter.task.note.ExamineRequest;
import org.isopter.task.note.HeaderRequest;
import org.isopter.task.note.NoteRequest;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What stands above a new record. */
public final class HeaderOptions {

  @Mixin private final IdOption id = new IdOption();

  @Option(names = "--subject", paramLabel = "ID", description = "The id of the person examined.")
  private @Nullable String subject;

  @Option(
      names = "--performed",
      paramLabel = "TIME",
      converter = ForeignOptions.Time.class,
      description = "When, with its offset: 2026-03-03T09:10:00+01:00 (default: now).")
  private @Nullable OffsetDateTime performed;

  @Option(names = "--performer", paramLabel = "NAME", description = "Who examined.")
  private @Nullable String performer;

  /**
   * Returns the header with what holds for the department; each call makes another id where none is
   * given.
   *
   * @throws UsageException when the person is not given
   */
  public Header header(Habits department) {
    if (subject == null) {
      throw new UsageException("--subject: saw none, wanted the id of who was examined");
    }
    return header(subject, department);
  }

  /**
   * Returns the header of what is added to a record, which keeps its own id and who examined.
   *
   * @throws UsageException when the record cannot be read, or when what it keeps is to be changed
   */
  public Header into(Path record, Habits department) {
    if (id.id().isPresent()) {
      throw kept("--id");
    }
    if (performer != null) {
      throw kept("--performer");
    }
    return header(subject == null ? NoteRequest.subject(record) : subject, department);
  }

  private static UsageException kept(String option) {
    return new UsageException(
        option
            + ": saw one beside --into, wanted none, for the record keeps its own; isopter amend"
            + " makes a new record");
  }

  private Header header(String person, Habits department) {
    return new HeaderRequest(
            id.id(), person, Optional.ofNullable(performed), Optional.ofNullable(performer))
        .header(department.settings());
  }

  /** Returns an examination that is entered step by step, of a person who may be asked for. */
  public ExamineRequest examine(Habits department, Path output, boolean replace) {
    return new ExamineRequest(
        Optional.ofNullable(subject),
        id.id(),
        Optional.ofNullable(performed),
        person -> header(person, department),
        department,
        output,
        replace);
  }
}
