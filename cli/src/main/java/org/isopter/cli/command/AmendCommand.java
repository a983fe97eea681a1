package org.isopter.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.concurrent.Callable;
import org.isopter.cli.option.HabitsFile;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.entry.Amendment;
import org.isopter.model.entry.Ulid;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Identifier;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Amends a record by shorthand. */
@Command(
    name = "amend",
    description = {
      "Amends a record by shorthand: a new record that names the old one.",
      "What the note tells takes the place of what the record tells of the same measurement, and is"
          + " added where there is none. The old record stays as it is."
    },
    footer = {
      "",
      "Examples:",
      "  isopter amend docs/demo/02-net-mender.yaml 'IOP R 15 GAT' --id e-2"
    })
public final class AmendCommand implements Callable<Integer> {

  private final Streams streams;

  @Parameters(index = "0", paramLabel = "RECORD", description = "The record to amend.")
  private Path record = Path.of("");

  @Parameters(index = "1", paramLabel = "TEXT", description = "What is to be changed or added.")
  private String text = "";

  @Option(names = "--id", paramLabel = "ID", description = "The new record's id (default: made).")
  private @Nullable String id;

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

  public AmendCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() throws IOException {
    RecordFormat format =
        record.toString().endsWith(".json") ? RecordFormat.JSON : RecordFormat.YAML;
    Result<Exam> old =
        new RecordReader(Catalogue.standard()).read(Files.readAllBytes(record), format);
    old.faults().forEach(fault -> streams.err().println("isopter: " + record + ": " + fault));
    if (!old.isOk()) {
      return ExitStatus.REFUSED;
    }
    Exam exam = old.orThrow();
    Note note = NoteReader.performed(exam.header().performed()).habits(habits).read(text);
    note.unread().forEach(unread -> streams.err().println("isopter: " + unread));
    if (!note.unread().isEmpty() || note.facts().isEmpty()) {
      streams.err().println("isopter: nothing was amended");
      return ExitStatus.REFUSED;
    }
    return write(exam, note.facts(), format);
  }

  private int write(Exam old, List<Fact<?>> facts, RecordFormat format) {
    Amendment.clashing(old, facts)
        .forEach(fact -> streams.err().println("isopter: replaced: " + words(fact)));
    Exam amended = Amendment.of(old, Identifier.of(newId()), facts);
    streams.out().print(new RecordWriter().write(amended, format));
    return ExitStatus.OK;
  }

  private static String words(Fact<?> fact) {
    return org.isopter.model.text.RecordText.of(fact);
  }

  private String newId() {
    return id != null ? id : Ulid.of(System.currentTimeMillis(), new SecureRandom());
  }
}
