package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
  private static final String KEYS =
      "n = normal; x = not done; x and a reason: refused, unable, n/a, masked, unknown; b = back; "
          + "- takes away what the step says; + adds to it; an empty line goes on; ? shows this and "
          + "all answers.";

  private final Header header;
  private final NoteReader reader;
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
  }

  /** Says whether the examination was declared to be finished. */
  public boolean isDone() {
    return done;
  }

  /** Returns what tells what is asked for next, behind the last step with what to look at again. */
  public String prompt() {
    if (at == END) {
      String again = String.join("", reviewed().stream().map(line -> line + "\n").toList());
      return again
          + "All steps are behind. "
          + missed()
          + "An empty line ends it; b goes back; the name of a step goes there.";
    }
    EntryField asked = field();
    String normal = asked.hasNormal() ? " n = " + asked.normal() + "." : "";
    String so = answers.has(at) ? " So far: " + answers.of(at) + "." : "";
    return "%d of %d, %s.%s For instance %s.%s"
        .formatted(at + 1, END, asked.title(), so, asked.example(), normal);
  }

  /** Returns the word before the place where the answer is typed. */
  public String label() {
    return at == END ? "end" : field().title();
  }

  private static EntryField field(int step) {
    return UsualStep.ASKED.get(step).question();
  }

  private EntryField field() {
    return field(at);
  }

  private String missed() {
    List<String> missing = missing();
    return missing.isEmpty() ? "" : "Nothing is recorded of: " + String.join("; ", missing) + ". ";
  }

  /** Takes an answer and returns the lines to show. */
  public List<String> enter(String line) {
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
    return take(List.of(new HeadedAnswer(text, reader.read(text))), adding);
  }

  private List<String> next() {
    if (at < END) {
      boolean kept = answers.has(at);
      String before = field().title() + ": " + answers.of(at);
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
    return at < END && field().hasNormal()
        ? take(List.of(read(field().normal())), false)
        : List.of("  there is no one normal for this: write what was found");
  }

  private HeadedAnswer read(String text) {
    return new HeadedAnswer(text, reader.read(text));
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
    List<String> lines = new ArrayList<>(List.of("  " + KEYS));
    IntStream.rangeClosed(0, END)
        .filter(answers::has)
        .forEach(step -> lines.add("  " + title(step) + ": " + answers.of(step)));
    lines.add("  " + (missing().isEmpty() ? "Nothing is missing." : missed().strip()));
    lines.addAll(reviewed());
    return lines;
  }

  private static String title(int step) {
    return step == END ? "besides" : field(step).title();
  }

  private List<String> words(String answer) {
    int named =
        IntStream.range(0, END).filter(i -> title(i).equals(answer)).findFirst().orElse(END);
    if (at == END && named < END) {
      at = named;
      return List.of();
    }
    boolean more = answer.startsWith("+");
    String said = more ? answer.substring(1).strip() : answer;
    return said.matches("(?i)x( .*)?") && at < END
        ? absent(said.substring(1))
        : take(ways(said), more);
  }

  private List<HeadedAnswer> ways(String answer) {
    return at == END
        ? List.of(read(answer))
        : HeadedAnswer.ways(reader, "", field().heading(), answer);
  }

  private List<String> absent(String reason) {
    HeadedAnswer read =
        read(field().heading() + (reason.isBlank() ? " not done" : " " + reason.strip()));
    boolean absent =
        read.isClear()
            && read.note().facts().stream().allMatch(fact -> fact.outcome().ifAbsent().isPresent());
    return absent
        ? take(List.of(read), false)
        : List.of(
            "  x takes a reason: refused, unable, n/a, masked or unknown; x R refused is one eye");
  }

  private List<String> take(List<HeadedAnswer> ways, boolean more) {
    String heading = at == END ? "VA" : field().heading();
    adding = more;
    return ways.stream()
        .filter(way -> way.isClear() && !way.isStray(heading))
        .findFirst()
        .map(way -> record(way, more))
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
      return Stream.concat(
              Stream.of("  not taken, for it contradicts what was said before:"),
              facts.faults().stream().map(fault -> "  " + fault.seen() + ": " + fault.wanted()))
          .toList();
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
      lines.add("  this is of " + title(home) + "; " + title(at) + " is still open");
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
    }
    return facts.map(all -> new Exam(header, all));
  }
}
