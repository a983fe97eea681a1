package org.isopter.cli.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.isopter.cli.option.HabitsFile;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.check.Consistency;
import org.isopter.model.entry.Ulid;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.RecordForm;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Streams;
import org.isopter.task.note.Questions;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.page.SummaryStyle;
import org.isopter.task.report.ExitStatus;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Turns bedside shorthand into a record. */
@Command(
    name = "note",
    description = {
      "Turns bedside shorthand into a record.",
      "An item that is not understood to the last word is told with its place, and nothing is"
          + " written; --keep-unread keeps such items as a remark."
    },
    footer = {
      "",
      "Examples:",
      "  isopter note 'IOP R 14 L 15' --id n-1 --subject p-1 --performed 2026-03-03T09:10:00Z"
    })
public final class NoteCommand implements Callable<Integer> {

  private final Streams streams;

  @Parameters(
      arity = "1",
      paramLabel = "TEXT|FILE|-",
      description = "The note, a file that holds it, or - for standard input.")
  private String note = "";

  @Option(
      names = "--id",
      paramLabel = "ID",
      description = "The record's own id (default: one that sorts by time is made).")
  private @Nullable String id;

  @Option(
      names = "--subject",
      required = true,
      paramLabel = "ID",
      description = "The id of the person examined.")
  private String subject = "";

  @Option(
      names = "--performed",
      paramLabel = "TIME",
      description = "When, with its offset: 2026-03-03T09:10:00+01:00 (default: now).")
  private OffsetDateTime performed = OffsetDateTime.now(ZoneId.systemDefault());

  @Option(names = "--performer", paramLabel = "NAME", description = "Who examined.")
  private @Nullable String performer;

  @Option(
      names = "--keep-unread",
      description = "Keep what is not understood as a remark on the examination, word for word.")
  private boolean keepUnread;

  @Option(
      names = "--habits",
      paramLabel = "FILE",
      converter = HabitsFile.class,
      description = "Phrases and habits of the department: what 14/16, OU and 0.8 mean there.")
  private Habits habits = Habits.none();

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

  @Option(names = "--summary", description = "Print the letter too, behind the record.")
  private boolean summary;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "yaml",
      description = "Form of the record: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private RecordForm format = RecordForm.YAML;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  public NoteCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() throws IOException {
    String text;
    try {
      text = text();
    } catch (CharacterCodingException other) {
      streams
          .err()
          .println("isopter: " + note + ": saw bytes that are no UTF-8, wanted a note in UTF-8");
      return ExitStatus.REFUSED;
    }
    Result<String> answered = answered(text);
    answered
        .faults()
        .forEach(fault -> streams.err().println(Messages.visible("isopter: " + fault)));
    return answered.isOk() ? read(answered.orThrow()) : ExitStatus.REFUSED;
  }

  private Result<String> answered(String text) throws IOException {
    return answers == null ? Result.ok(text) : Questions.answered(text, reader(), answers);
  }

  private NoteReader reader() {
    return NoteReader.performed(performed).habits(habits);
  }

  private int read(String text) throws IOException {
    Note read = reader().read(text);
    if (questions != null) {
      Questions.write(read, questions);
    }
    read.unread().forEach(unread -> streams.err().println(Messages.visible("isopter: " + unread)));
    if (!read.unread().isEmpty() && !keepUnread) {
      streams.err().println("isopter: nothing was written; --keep-unread keeps it as a remark");
      return ExitStatus.REFUSED;
    }
    if (text.isBlank()) {
      streams.err().println("isopter: the note is empty");
      return ExitStatus.REFUSED;
    }
    Result<Exam> exam = reader().keeping(header(), text);
    exam.faults().forEach(fault -> streams.err().println(Messages.visible("isopter: " + fault)));
    if (!exam.isOk()) {
      return ExitStatus.REFUSED;
    }
    write(exam.orThrow());
    return ExitStatus.OK;
  }

  private void write(Exam exam) {
    Consistency.check(exam)
        .forEach(
            breach ->
                streams
                    .err()
                    .println(
                        "isopter: look again: "
                            + breach.saw()
                            + "; "
                            + breach.wanted()
                            + " ("
                            + breach.rule()
                            + ")"));
    RecordWriter writer = new RecordWriter();
    streams
        .out()
        .print(
            switch (format) {
              case NDJSON -> writer.line(exam) + "\n";
              case JSON -> writer.write(exam, RecordFormat.JSON);
              case YAML -> writer.write(exam, RecordFormat.YAML);
            });
    if (summary) {
      Letter letter = SummaryForm.TEXT.letter();
      streams.out().print("\n" + letter.write(Summary.of(exam, SummaryStyle.LETTER.words())));
    }
  }

  private Header header() {
    return new Header(
        Identifier.of(id != null ? id : Ulid.of(System.currentTimeMillis(), new SecureRandom())),
        Party.of(Identifier.of(subject)),
        Optional.ofNullable(performer).map(Party::named),
        performed,
        Status.FINAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Returns the note, without guessing at bytes that are no UTF-8. */
  private String text() throws IOException {
    Optional<Path> file = file();
    if (!note.equals("-") && file.isEmpty()) {
      return note;
    }
    byte[] bytes =
        file.isPresent()
            ? Files.readAllBytes(file.get())
            : streams.in().readNBytes(InputDocuments.LONGEST);
    return UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
  }

  private Optional<Path> file() {
    try {
      return Optional.of(Path.of(note)).filter(Files::isRegularFile);
    } catch (InvalidPathException words) {
      return Optional.empty();
    }
  }
}
