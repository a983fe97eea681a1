package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.entry.GuidedEntry;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.page.SummaryStyle;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/**
 * Goes through an examination step by step and writes NAME.yaml (the record), NAME.txt (the letter)
 * and NAME.json (a FHIR bundle). After each step NAME.draft holds what was entered, and the next
 * run goes on there.
 */
public final class ExamineTask {

  private final RunLog log;
  private final Path name;
  private final GuidedEntry entry;

  /** Makes a task of a department without habits of its own. */
  public ExamineTask(RunLog log, Header header, Path name) {
    this(log, header, Habits.none(), name);
  }

  /**
   * Makes a task.
   *
   * @param name where to write, without the endings
   */
  public ExamineTask(RunLog log, Header header, Habits habits, Path name) {
    this.log = log;
    this.name = name;
    this.entry = new GuidedEntry(header, NoteReader.performed(header.performed()).habits(habits));
  }

  /**
   * Asks for every step in shorthand. Where the lines end too early, the status is {@link
   * ExitStatus#REFUSED} and the draft stays.
   *
   * @param typed a file with a line for each step; empty for the input of the log
   * @throws IOException when a file cannot be read
   */
  public void run(Optional<Path> typed) throws IOException {
    if (Files.isRegularFile(draft())) {
      entry.resume(Files.readString(draft(), UTF_8));
      say("going on with the draft " + draft());
    }
    try (BufferedReader lines = lines(typed)) {
      if (asked(lines)) {
        finish();
      } else {
        refuse("kept as a draft in " + draft());
      }
    }
  }

  private BufferedReader lines(Optional<Path> typed) throws IOException {
    return typed.isPresent()
        ? Files.newBufferedReader(typed.get(), UTF_8)
        : new BufferedReader(new InputStreamReader(log.streams().in(), UTF_8));
  }

  /** Says whether all steps were answered before the lines ended. */
  private boolean asked(BufferedReader lines) throws IOException {
    while (!entry.isDone()) {
      log.streams().err().print(entry.prompt());
      log.streams().err().flush();
      String line = lines.readLine();
      if (line == null) {
        return false;
      }
      entry.enter(line).forEach(this::say);
      AtomicFile.write(draft(), entry.draft());
    }
    return true;
  }

  private void finish() throws IOException {
    if (!entry.missing().isEmpty()) {
      say("nothing is recorded of: " + String.join(", ", entry.missing()));
    }
    Result<Exam> read = entry.exam();
    read.faults().forEach(fault -> log.say(fault.toString()));
    if (read instanceof Result.Ok<Exam> exam && !exam.value().facts().isEmpty()) {
      write(exam.value());
      Files.deleteIfExists(draft());
    } else {
      refuse("nothing was written; the draft is " + draft());
    }
  }

  private void write(Exam exam) {
    AtomicFile.write(beside(".yaml"), new RecordWriter().write(exam, RecordFormat.YAML));
    String letter = SummaryForm.TEXT.letter().write(Summary.of(exam, SummaryStyle.LETTER.words()));
    AtomicFile.write(beside(".txt"), letter);
    AtomicFile.write(beside(".json"), bundle(exam));
    log.data().print(letter);
    say("written: " + beside(".yaml") + ", " + beside(".txt") + ", " + beside(".json"));
  }

  private static String bundle(Exam exam) {
    return FhirWriter.of(BundleKind.COLLECTION).indented().write(exam) + "\n";
  }

  private Path draft() {
    return beside(".draft");
  }

  private Path beside(String end) {
    return name.resolveSibling(name.getFileName() + end);
  }

  private void refuse(String why) {
    say(why);
    log.raise(ExitStatus.REFUSED);
  }

  /** Writes a plain line, which a screen reader reads without what programs put before it. */
  private void say(String line) {
    log.streams().err().println(line);
  }
}
