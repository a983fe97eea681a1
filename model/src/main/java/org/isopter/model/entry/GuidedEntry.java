package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.check.Consistency;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.note.habit.Reading;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Result;

/**
 * The entry of an examination in its usual order. Whoever calls it shows what {@link #prompt} and
 * {@link #enter} return, a line at a time, and keeps {@link #draft}.
 *
 * <p>An answer is shorthand, with or without its heading; or {@code n} for normal, {@code x} and
 * perhaps a reason for not done, {@code b} for back, nothing for the next step, or the number of
 * what an unclear answer means. Instances are not shared between threads.
 */
public final class GuidedEntry {

  private final Header header;
  private final NoteReader reader;
  private final Map<Integer, String> answers = new TreeMap<>();
  private List<Reading> asked = List.of();
  private String unclear = "";
  private Optional<Unread> question = Optional.empty();
  private int at;

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

  /** Says whether all steps are behind. */
  public boolean isDone() {
    return at >= Step.USUAL.size();
  }

  /** Returns the line that asks for the next answer. */
  public String prompt() {
    Step step = Step.USUAL.get(at);
    String normal = step.hasNormal() ? "; n = " + step.normal() : "";
    return "%d of %d, %s (for instance %s%s; x = not done): "
        .formatted(at + 1, Step.USUAL.size(), step.name(), step.example(), normal);
  }

  /** Takes an answer and returns the lines to show. */
  public List<String> enter(String line) {
    String answer = line.strip();
    if (!asked.isEmpty() && answer.matches("[1-9]") && number(answer) <= asked.size()) {
      String text =
          NoteReader.answered(unclear, question.orElseThrow(), asked.get(number(answer) - 1));
      return take(text);
    }
    asked = List.of();
    return switch (answer) {
      case "" -> skip();
      case "b" -> back();
      case "n" -> normal();
      default -> take(shorthand(answer));
    };
  }

  private static int number(String digit) {
    return Integer.parseInt(digit);
  }

  private List<String> skip() {
    at++;
    return List.of();
  }

  private List<String> back() {
    at = Math.max(0, at - 1);
    return List.of(
        "back to " + Step.USUAL.get(at).name() + ": " + answers.getOrDefault(at, "nothing yet"));
  }

  private List<String> normal() {
    Step step = Step.USUAL.get(at);
    return step.hasNormal()
        ? take(step.normal())
        : List.of("there is no one normal for this: write what was found");
  }

  /** Returns the answer with the heading of the step, unless it is read without. */
  private String shorthand(String answer) {
    String heading = Step.USUAL.get(at).heading();
    if (answer.equals("x")) {
      return heading + " not done";
    }
    if (answer.startsWith("x ")) {
      return heading + " " + answer.substring(2);
    }
    Note with = reader.read(heading + " " + answer);
    boolean better = with.unread().isEmpty() || !reader.read(answer).unread().isEmpty();
    return better ? heading + " " + answer : answer;
  }

  private List<String> take(String text) {
    Note note = reader.read(text);
    if (!note.unread().isEmpty()) {
      return ask(text, note.unread().get(0));
    }
    asked = List.of();
    answers.put(at, text);
    at++;
    List<String> lines = new ArrayList<>();
    note.facts().forEach(fact -> lines.add("  recorded: " + RecordText.of(fact)));
    lines.addAll(contradictions());
    return lines;
  }

  private List<String> ask(String text, Unread unread) {
    unclear = text;
    question = Optional.of(unread);
    asked = unread.readings();
    List<String> lines = new ArrayList<>();
    lines.add("  not read: \"" + unread.text() + "\": " + unread.why());
    if (asked.isEmpty()) {
      lines.add("  nearest understood: " + unread.nearest());
    }
    for (int i = 0; i < asked.size(); i++) {
      lines.add("  " + (i + 1) + " = " + asked.get(i).choice() + ": " + asked.get(i).text());
    }
    return lines;
  }

  private List<String> contradictions() {
    Result<Exam> exam = exam();
    if (!exam.isOk()) {
      return exam.faults().stream().map(fault -> "  contradicts: " + fault).toList();
    }
    return Consistency.check(exam.orThrow()).stream()
        .map(
            violation ->
                "  look again: "
                    + violation.seen()
                    + "; "
                    + violation.wanted()
                    + " ("
                    + violation.rule()
                    + ")")
        .toList();
  }

  /** Returns the names of the steps of which nothing is said yet. */
  public List<String> missing() {
    return Stream.iterate(0, i -> i < Step.USUAL.size(), i -> i + 1)
        .filter(i -> !answers.containsKey(i))
        .map(i -> Step.USUAL.get(i).name())
        .toList();
  }

  /** Returns the examination as said so far, or why it contradicts itself. */
  public Result<Exam> exam() {
    return reader.facts(note()).map(facts -> new Exam(header, facts));
  }

  /** Returns all answers in shorthand, a step a line. */
  public String note() {
    return String.join("\n", answers.values());
  }

  /** Returns the answers so that {@link #resume} takes them again. */
  public String draft() {
    return answers.entrySet().stream()
        .map(entry -> entry.getKey() + "\t" + entry.getValue() + "\n")
        .collect(Collectors.joining());
  }

  /** Takes the answers of a draft and goes on behind the last of them. */
  public void resume(String draft) {
    for (String line : draft.split("\n", -1)) {
      int tab = line.indexOf('\t');
      if (tab > 0 && line.substring(0, tab).matches("\\d\\d?")) {
        int step = Integer.parseInt(line.substring(0, tab));
        answers.put(step, line.substring(tab + 1));
        at = Math.max(at, step + 1);
      }
    }
  }
}
