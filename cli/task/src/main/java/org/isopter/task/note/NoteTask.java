package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.Records;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/** Turns bedside shorthand into a record. */
public final class NoteTask {

  /** Some editors write it at the start of a file in UTF-8; it says nothing. */
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final RunLog log;
  private final NoteRequest request;

  /** Whether the note itself comes from the input, so that nobody can be asked there. */
  private boolean piped;

  public NoteTask(RunLog log, NoteRequest request) {
    this.log = log;
    this.request = request;
  }

  /**
   * Reads a note from where it is.
   *
   * @param note the note, a file that holds it, or {@code -} for the input of the log
   * @throws IOException when a file cannot be read or written
   */
  public void run(String note) throws IOException {
    piped = note.equals("-");
    if (note.matches("\\S+\\.txt") && file(note).isEmpty()) {
      refuse(note + ": saw no such file, wanted a note or a file that holds it");
      return;
    }
    String text;
    try {
      text = text(note);
    } catch (CharacterCodingException binary) {
      refuse(note + ": saw bytes that are no UTF-8, wanted a note in UTF-8");
      return;
    }
    read(text);
  }

  /**
   * Writes the record of a note to the data of the log. What is not understood, and what
   * contradicts, is in the log; a refused note raises the status to {@link ExitStatus#REFUSED}.
   *
   * @throws IOException when nobody can be asked at the terminal
   */
  public void read(String text) throws IOException {
    Result<String> answered =
        request.answers().isPresent()
            ? Questions.answered(text, reader(), request.answers().get())
            : Result.ok(text);
    if (answered instanceof Result.Ok<String> whole) {
      boolean asks =
          log.streams().terminal()
              && request.answers().isEmpty()
              && request.questions().isEmpty()
              && !piped;
      readAnswered(asks ? Asking.on(log.streams(), reader()).about(whole.value()) : whole.value());
    } else {
      refuse(answered);
    }
  }

  private NoteReader reader() {
    return NoteReader.performed(request.header().performed()).habits(request.habits());
  }

  private void readAnswered(String text) throws IOException {
    Note note = reader().read(text);
    if (request.questions().isPresent()) {
      Questions.write(note, request.questions().get());
    }
    note.unread().forEach(unread -> log.say(Shown.of(unread.toString())));
    if (!note.unread().isEmpty() && !request.keepUnread()) {
      refuse("nothing was written; --keep-unread keeps it as a remark");
    } else if (note.facts().isEmpty() && note.unread().isEmpty()) {
      refuse("the note is empty");
    } else {
      write(reader().keeping(request.header(), text).flatMap(this::intoRecord));
    }
  }

  /** Returns the examination, or the record that it is added to with both. */
  private Result<Exam> intoRecord(Exam exam) {
    return request.into().isEmpty()
        ? Result.ok(exam)
        : StoredRecord.read(request.into().get()).flatMap(old -> Addition.to(old, exam));
  }

  private void write(Result<Exam> read) {
    if (read instanceof Result.Ok<Exam> exam) {
      write(exam.value());
    } else {
      refuse(read);
    }
  }

  private void write(Exam exam) {
    Consistency.check(exam).forEach(violation -> log.say(lookAgain(violation)));
    log.data().print(new Records().write(exam, request.form()));
    if (request.letter()) {
      Summary summary = Summary.of(exam);
      log.data().print("\n" + SummaryForm.TEXT.letter().write(summary));
    }
  }

  static String lookAgain(Violation violation) {
    return "look again: %s; %s (%s)"
        .formatted(violation.seen(), violation.wanted(), violation.rule());
  }

  private void refuse(Result<?> refused) {
    refused.faults().forEach(fault -> log.say(fault.toString()));
    log.raise(ExitStatus.REFUSED);
  }

  private void refuse(String why) {
    log.say(why);
    log.raise(ExitStatus.REFUSED);
  }

  /** Returns the note, without guessing at bytes that are no UTF-8. */
  private String text(String note) throws IOException {
    Optional<Path> file = file(note);
    if (!note.equals("-") && file.isEmpty()) {
      return note;
    }
    byte[] bytes =
        file.isPresent()
            ? Files.readAllBytes(file.get())
            : log.streams().in().readNBytes(InputDocuments.LONGEST);
    String text = UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  private static Optional<Path> file(String note) {
    try {
      return Optional.of(Path.of(note)).filter(Files::isRegularFile);
    } catch (InvalidPathException words) {
      return Optional.empty();
    }
  }
}
