package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.text.Eyes;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * The entry of an examination in its usual order. Whoever calls it shows {@link #prompt} and what
 * {@link #enter} returns, a line at a time, and keeps {@link #draft}.
 *
 * <p>An answer is shorthand, with or without its heading; or one of the keys that {@code ?} lists;
 * or the number of what an unclear answer means. Behind the last step an empty line ends it. What
 * was answered never contradicts itself: an answer that would is not taken. Instances are not
 * shared between threads.
 */
public final class GuidedEntry {

  private static final int END = EntryAnswers.MORE;

  private final Header header;
  private final NoteReader reader;
  private final StepReader steps;
  private EntryAnswers answers = new EntryAnswers();
  private Optional<Unread> question = Optional.empty();
  private String unclear = "";
  private boolean adding;
  private int at;
  private boolean done;

  /**
   * Starts an entry.
   *
   * @param header what holds for the examination
   * @param reader what reads the answers
   */
  public GuidedEntry(Header header, NoteReader reader) {
    this.header = header;
    this.reader = reader;
    this.steps = new StepReader(reader);
  }

  /** Says whether the examination was declared to be finished. */
  public boolean isDone() {
    return done;
  }

  /** Returns the line that tells what is asked for next. */
  public String prompt() {
    return at == END
        ? EntryLines.end(missing())
        : EntryLines.question(at, StepReader.field(at), answers.of(at));
  }

  /** Returns the word before the place where the answer is typed. */
  public String label() {
    return at == END ? "end" : StepReader.title(at);
  }

  /** Takes an answer and returns the lines to show; at the end, also what to look at again. */
  public List<String> enter(String line) {
    int before = at;
    List<String> lines = answered(line);
    return before < END && at == END
        ? Stream.concat(lines.stream(), reviewed().stream()).distinct().toList()
        : lines;
  }

  private List<String> answered(String line) {
    String answer = line.strip();
    if (question.isPresent() && answer.matches("\\d{1,2}")) {
      return choose(Integer.parseInt(answer));
    }
    question = Optional.empty();
    return switch (answer.toLowerCase(Locale.ROOT)) {
      case "" -> next();
      case "b" -> back();
      case "n" -> normal();
      case "-" -> takenAway();
      case "?" -> help();
      default -> words(answer);
    };
  }

  private List<String> choose(int number) {
    Unread asked = question.orElseThrow();
    if (number < 1 || number > asked.readings().size()) {
      return List.of("  not one of the numbers: 1 to " + asked.readings().size());
    }
    question = Optional.empty();
    String text = NoteReader.answered(unclear, asked, asked.readings().get(number - 1));
    return take(List.of(steps.read(text)), adding);
  }

  private List<String> next() {
    if (at < END) {
      boolean kept = answers.has(at);
      String before = label() + ": " + answers.of(at);
      at++;
      return kept ? List.of("  kept, " + before) : List.of();
    }
    done = !answers.isEmpty();
    return done ? List.of() : List.of("  nothing is recorded yet: b goes back");
  }

  private List<String> back() {
    if (at == 0) {
      return List.of("  this is the first step");
    }
    at--;
    return answers.has(at)
        ? List.of("  a new answer takes the place of the old one; an empty line keeps it")
        : List.of();
  }

  private List<String> normal() {
    return at < END && StepReader.field(at).hasNormal()
        ? take(List.of(steps.read(StepReader.field(at).normal())), false)
        : List.of("  there is no one normal for this: write what was found");
  }

  private List<String> takenAway() {
    if (!answers.has(at)) {
      return List.of("  nothing was said of this");
    }
    String old = answers.of(at);
    answers.remove(at);
    return List.of("  taken away: " + old);
  }

  private List<String> help() {
    List<String> lines = new ArrayList<>(List.of(EntryLines.KEYS));
    IntStream.rangeClosed(0, END)
        .filter(answers::has)
        .forEach(step -> lines.add("  " + StepReader.title(step) + ": " + answers.of(step)));
    lines.add("  " + EntryLines.missing(missing()));
    lines.addAll(reviewed());
    return lines;
  }

  private List<String> words(String answer) {
    OptionalInt named =
        IntStream.range(0, END).filter(i -> StepReader.title(i).equals(answer)).findFirst();
    if (at == END && named.isPresent()) {
      at = named.getAsInt();
      return List.of();
    }
    boolean more = answer.startsWith("+");
    String said = more ? answer.substring(1).strip() : answer;
    return said.matches("(?i)x( .*)?") && at < END
        ? absent(said.substring(1), more)
        : take(steps.ways(at, said), more);
  }

  private List<String> absent(String reason, boolean more) {
    return steps
        .absent(at, reason)
        .map(answer -> take(List.of(answer), more))
        .orElse(List.of(EntryLines.REASONS));
  }

  private List<String> take(List<HeadedAnswer> ways, boolean more) {
    adding = more;
    return StepReader.clear(at, ways)
        .map(answer -> record(answer, more))
        .orElseGet(() -> ask(ways.get(0)));
  }

  private List<String> record(HeadedAnswer answer, boolean more) {
    int home = EntryAnswers.home(at, answer.note().facts());
    EntryAnswers tried = answers.copy();
    if (more || home != at || at == END) {
      tried.add(home, answer.text());
    } else {
      tried.put(home, answer.text());
    }
    Result<List<Fact<?>>> facts = reader.facts(tried.note());
    if (!facts.isOk()) {
      return EntryLines.contradicted(facts.faults(), tried);
    }
    Set<Violation> before = Set.copyOf(violations());
    answers = tried;
    List<String> lines = new ArrayList<>(EntryLines.recorded(answer.note().facts(), header));
    List<Violation> now = violations();
    lines.addAll(EntryLines.lookAgain(now.stream().filter(one -> !before.contains(one)).toList()));
    move(home, lines);
    return lines;
  }

  private void move(int home, List<String> lines) {
    if (home == at) {
      at = Math.min(END, at + 1);
    } else if (at < END) {
      String whose =
          home == END ? "this is asked by no step" : "this is of " + StepReader.title(home);
      lines.add("  " + whose + "; " + label() + " is still open");
    }
  }

  private List<String> ask(HeadedAnswer answer) {
    if (answer.note().unread().isEmpty()) {
      return List.of("  not taken: it says nothing of " + label());
    }
    unclear = answer.text();
    Unread unread = answer.note().unread().get(0);
    question = Optional.of(unread).filter(one -> !one.readings().isEmpty());
    return EntryLines.question(unread);
  }

  /** Returns what is to be looked at again, a line each. */
  public List<String> reviewed() {
    return EntryLines.lookAgain(violations());
  }

  private List<Violation> violations() {
    return Consistency.check(exam());
  }

  /** Returns the steps of which nothing is said, with the eye where it is one. */
  public List<String> missing() {
    ExamView view = ExamView.of(exam());
    List<String> missing = new ArrayList<>();
    for (UsualStep step : UsualStep.ASKED) {
      for (Eyes eyes : UsualStep.silent(view, step.findings())) {
        String words = eyes == Eyes.EACH ? "" : ", " + eyes.words();
        missing.add(step.question().title() + words);
      }
    }
    return missing;
  }

  /** Returns the examination as said so far. */
  public Exam exam() {
    return new Exam(header, reader.read(answers.note()).facts());
  }

  /** Returns all answers in shorthand, an answer a line. */
  public String note() {
    return answers.note();
  }

  /** Returns what is needed to go on later. */
  public EntryDraft draft() {
    return EntryDraft.of(header, answers);
  }

  /**
   * Takes the answers of a draft and goes on behind the last of them; refused where they are not
   * read any more, for instance since the habits of the department changed.
   */
  public Result<Exam> resume(EntryDraft draft) {
    Result<List<Fact<?>>> facts = reader.facts(draft.answers().note());
    if (facts.isOk()) {
      answers = draft.answers().copy();
      at = answers.next();
      return facts.map(all -> new Exam(header, all));
    }
    return Result.refused(facts.faults().stream().map(GuidedEntry::notReadAnyMore).toList());
  }

  private static Fault notReadAnyMore(Fault fault) {
    return new Fault(
        "answer",
        fault.seen() + ": " + fault.wanted(),
        "what is read as it was when it was entered",
        "give the habits of then, or take the line out of the draft");
  }
}
