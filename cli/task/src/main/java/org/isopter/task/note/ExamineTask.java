package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.FailureText;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.entry.EntryDraft;
import org.isopter.model.entry.GuidedEntry;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.NoteReader;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.isopter.task.io.Dialogue;
import org.isopter.task.io.PlainDialogue;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/**
 * Goes through an examination step by step and writes NAME.yaml (the record), NAME.txt (the letter)
 * and NAME.json (a FHIR bundle). After each step NAME.draft holds what was entered, and the next
 * run goes on there.
 */
public final class ExamineTask {

  private final RunLog log;
  private final ExamineRequest request;

  /** Makes a task. */
  public ExamineTask(RunLog log, ExamineRequest request) {
    this.log = log;
    this.request = request;
  }

  /**
   * Asks for every step in shorthand. Where the lines end too early, the status is {@link
   * ExitStatus#REFUSED} and the draft stays.
   *
   * @param typed a file with a line for each step; empty for whoever sits at the keyboard
   * @throws IOException when a file cannot be read
   */
  public void run(Optional<Path> typed) throws IOException {
    Optional<Path> there =
        Stream.of(".yaml", ".txt", ".json").map(this::beside).filter(Files::exists).findFirst();
    if (there.isPresent() && !request.replace()) {
      refuse(there.get() + " is there already; --replace writes over it");
      return;
    }
    Optional<Fault> unread = typed.flatMap(ExamineTask::unreadable);
    if (unread.isPresent()) {
      refuse(unread.get().toString());
      return;
    }
    try (Dialogue dialogue = dialogue(typed)) {
      Result<GuidedEntry> begun = begun(dialogue);
      if (begun instanceof Result.Ok<GuidedEntry> entry) {
        run(dialogue, entry.value());
      } else {
        begun.faults().forEach(fault -> log.say(inDraft(fault).toString()));
        log.raise(ExitStatus.REFUSED);
      }
    }
  }

  /** Returns why what was typed cannot be read, before anything is asked. */
  private static Optional<Fault> unreadable(Path typed) {
    return text(typed, "a file with an answer a line, in UTF-8").faults().stream().findFirst();
  }

  private static Result<String> text(Path file, String wanted) {
    try {
      return Result.ok(Files.readString(file, UTF_8));
    } catch (IOException failed) {
      return Result.refused(List.of(Fault.of("" + file, FailureText.of(failed), wanted)));
    }
  }

  private Dialogue dialogue(Optional<Path> typed) throws IOException {
    return typed.isPresent()
        ? new PlainDialogue(Files.newBufferedReader(typed.get(), UTF_8), log.streams().err())
        : log.streams().dialogue();
  }

  private Fault inDraft(Fault fault) {
    String file = draft().toString();
    return fault.path().equals(file) ? fault : fault.at(file + ": " + fault.path());
  }

  /** Returns an entry that goes on with the draft, or a new one. */
  private Result<GuidedEntry> begun(Dialogue dialogue) throws IOException {
    if (Files.isRegularFile(draft())) {
      return text(draft(), "a draft as examine writes it")
          .flatMap(EntryDraft::read)
          .flatMap(draft -> resumed(dialogue, draft));
    }
    Optional<Header> header =
        request.subject().isPresent()
            ? Optional.of(request.header(request.subject().get()))
            : who(dialogue);
    return header
        .map(known -> Result.ok(new GuidedEntry(known, reader(known))))
        .orElseGet(() -> Result.refused(List.of()));
  }

  /** Asks whom the examination is of, until that can be recorded. */
  private Optional<Header> who(Dialogue dialogue) throws IOException {
    dialogue.say("Who is examined: the id of the person.");
    Optional<String> subject = dialogue.ask("who");
    while (subject.isPresent()) {
      try {
        Identifier id = Identifier.of(subject.get().strip());
        return Optional.of(request.header(id.value()));
      } catch (FaultException noId) {
        noId.faults().forEach(fault -> dialogue.say("  " + fault));
      }
      subject = dialogue.ask("who");
    }
    return Optional.empty();
  }

  private Result<GuidedEntry> resumed(Dialogue dialogue, EntryDraft draft) {
    String subject = request.subject().orElse(draft.subject());
    List<Fault> other = other(draft);
    if (!other.isEmpty()) {
      return Result.refused(other);
    }
    return draft
        .header(request.header(subject))
        .flatMap(
            header -> {
              GuidedEntry entry = new GuidedEntry(header, reader(header));
              dialogue.say(
                  "Going on with %s: %s, begun %s."
                      .formatted(draft(), subject, header.performed()));
              return entry.resume(draft).map(exam -> entry);
            });
  }

  /** Returns what the command line asks for otherwise than the draft has it. */
  private List<Fault> other(EntryDraft draft) {
    List<Fault> other = new ArrayList<>();
    request
        .id()
        .filter(id -> !id.equals(draft.record()))
        .ifPresent(id -> other.add(EntryDraft.unfinished("--id", id, draft.record())));
    request
        .performed()
        .filter(when -> !when.isEqual(draft.performed()))
        .map(Object::toString)
        .ifPresent(
            when -> other.add(EntryDraft.unfinished("--performed", when, draft.performed() + "")));
    return other;
  }

  private NoteReader reader(Header header) {
    return NoteReader.performed(header.performed()).habits(request.habits());
  }

  private void run(Dialogue dialogue, GuidedEntry entry) throws IOException {
    dialogue.say("? lists the keys: n normal, x not done, b back.");
    while (!entry.isDone()) {
      dialogue.say(entry.prompt());
      Optional<String> line = dialogue.ask(entry.label());
      if (line.isEmpty()) {
        AtomicFile.write(draft(), entry.draft().write());
        dialogue.say("Kept as a draft in " + draft() + "; nothing else was written.");
        log.raise(ExitStatus.REFUSED);
        return;
      }
      entry.enter(line.get()).forEach(dialogue::say);
      AtomicFile.write(draft(), entry.draft().write());
    }
    finish(dialogue, entry);
  }

  private void finish(Dialogue dialogue, GuidedEntry entry) throws IOException {
    write(entry.exam());
    dialogue.say("Written: " + beside(".yaml") + ", " + beside(".txt") + ", " + beside(".json"));
    Files.deleteIfExists(draft());
  }

  private void write(Exam exam) {
    AtomicFile.write(beside(".yaml"), new RecordWriter().write(exam, RecordFormat.YAML));
    String letter = SummaryForm.TEXT.letter().write(Summary.of(exam));
    AtomicFile.write(beside(".txt"), letter);
    AtomicFile.write(beside(".json"), bundle(exam));
    log.data().print(letter);
  }

  private static String bundle(Exam exam) {
    return FhirWriter.of(BundleKind.COLLECTION).indented().write(exam) + "\n";
  }

  private Path draft() {
    return beside(".draft");
  }

  private Path beside(String end) {
    return request.name().resolveSibling(request.name().getFileName() + end);
  }

  private void refuse(String why) {
    log.say(why);
    log.raise(ExitStatus.REFUSED);
  }
}
