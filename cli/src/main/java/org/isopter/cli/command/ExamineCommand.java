package org.isopter.cli.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.isopter.cli.option.HabitsFile;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.entry.GuidedEntry;
import org.isopter.model.entry.Ulid;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.isopter.task.io.Streams;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.page.SummaryStyle;
import org.isopter.task.report.ExitStatus;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Goes through an examination step by step. */
@Command(
    name = "examine",
    description = {
      "Goes through an examination in its usual order and writes record, letter and bundle.",
      "One line for each step, in shorthand: n is normal (the line says what that records), x not"
          + " done and perhaps why (x refused), b back, an empty line the next step.",
      "What was told is kept in a draft after every step, and taken up again."
    },
    footer = {
      "",
      "Examples:",
      "  isopter examine --subject p-1 --output target/visit --typed docs/normal-examination.txt"
    })
public final class ExamineCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = "--subject",
      required = true,
      paramLabel = "ID",
      description = "The id of the person examined.")
  private String subject = "";

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

  @Option(names = "--id", paramLabel = "ID", description = "The record's id (default: made).")
  private @Nullable String id;

  @Option(
      names = "--performed",
      paramLabel = "TIME",
      description = "When, with its offset (default: now).")
  private @Nullable OffsetDateTime performed;

  @Option(names = "--performer", paramLabel = "NAME", description = "Who examined.")
  private @Nullable String performer;

  @Option(
      names = "--habits",
      paramLabel = "FILE",
      converter = HabitsFile.class,
      description = "Phrases and habits of the department.")
  private Habits habits = Habits.none();

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  public ExamineCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() throws IOException {
    Path folder = output.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    Header header = header();
    GuidedEntry entry =
        new GuidedEntry(header, NoteReader.performed(header.performed()).habits(habits));
    Path draft = beside(".draft");
    if (Files.isRegularFile(draft)) {
      entry.resume(Files.readString(draft, UTF_8));
      say("going on with the draft " + draft);
    }
    if (!asked(entry, draft)) {
      say("kept as a draft in " + draft);
      return ExitStatus.REFUSED;
    }
    return finish(entry, draft);
  }

  /** Asks for every step; says whether all were answered before the input ended. */
  private boolean asked(GuidedEntry entry, Path draft) throws IOException {
    try (BufferedReader lines = lines()) {
      return asked(entry, draft, lines);
    }
  }

  private BufferedReader lines() throws IOException {
    return typed != null
        ? Files.newBufferedReader(typed, UTF_8)
        : new BufferedReader(new InputStreamReader(streams.in(), UTF_8));
  }

  private boolean asked(GuidedEntry entry, Path draft, BufferedReader lines) throws IOException {
    while (!entry.isDone()) {
      streams.err().print(entry.prompt());
      streams.err().flush();
      String line = lines.readLine();
      if (line == null) {
        return false;
      }
      entry.enter(line).forEach(this::say);
      Files.writeString(draft, entry.draft(), UTF_8);
    }
    return true;
  }

  private int finish(GuidedEntry entry, Path draft) throws IOException {
    say("nothing is told of: " + String.join(", ", entry.missing()));
    Result<Exam> exam = entry.exam();
    exam.faults().forEach(fault -> streams.err().println("isopter: " + fault));
    if (!exam.isOk() || exam.orThrow().facts().isEmpty()) {
      say("nothing was written; the draft is " + draft);
      return ExitStatus.REFUSED;
    }
    write(exam.orThrow());
    Files.deleteIfExists(draft);
    return ExitStatus.OK;
  }

  private void write(Exam exam) throws IOException {
    Files.writeString(beside(".yaml"), new RecordWriter().write(exam, RecordFormat.YAML), UTF_8);
    String letter = SummaryForm.TEXT.letter().write(Summary.of(exam, SummaryStyle.LETTER.words()));
    Files.writeString(beside(".txt"), letter, UTF_8);
    Files.writeString(beside(".json"), bundle(exam), UTF_8);
    streams.out().print(letter);
    say("written: " + beside(".yaml") + ", " + beside(".txt") + ", " + beside(".json"));
  }

  private static String bundle(Exam exam) {
    return FhirWriter.of(BundleKind.COLLECTION).indented().write(exam) + "\n";
  }

  private Path beside(String end) {
    return output.resolveSibling(output.getFileName() + end);
  }

  private void say(String line) {
    streams.err().println(line);
  }

  private Header header() {
    return new Header(
        Identifier.of(id != null ? id : Ulid.of(System.currentTimeMillis(), new SecureRandom())),
        Party.of(Identifier.of(subject)),
        Optional.ofNullable(performer).map(Party::named),
        performed != null ? performed : OffsetDateTime.now(ZoneId.systemDefault()),
        Status.FINAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
