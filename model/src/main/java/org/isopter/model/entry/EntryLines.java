package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.note.Unread;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Fault;

/** What guided entry says to an answer: plain lines, each whole in itself. */
final class EntryLines {

  static final String KEYS =
      "  n = normal; x = not done; x and a reason: refused, unable, n/a, masked, unknown; b = back; "
          + "- takes away what the step says; + adds to it; an empty line goes on; ? shows this and "
          + "all answers.";
  static final String REASONS =
      "  x takes a reason: refused, unable, n/a, masked or unknown; x R refused is of one eye";

  private static final Pattern LINE = Pattern.compile("at line (\\d+), column \\d+");

  private EntryLines() {}

  /** Returns the question of a step, with what was answered to it. */
  static String question(int step, EntryField asked, String answer) {
    String normal = asked.hasNormal() ? " n = " + asked.normal() + "." : "";
    String soFar = answer.isEmpty() ? "" : " So far: " + answer + ".";
    return "%d of %d, %s.%s For instance %s.%s"
        .formatted(step + 1, EntryAnswers.MORE, asked.title(), soFar, asked.example(), normal);
  }

  /** Returns what stands behind the last step. */
  static String end(List<String> missing) {
    return "All steps are behind. "
        + missing(missing)
        + " An empty line ends it; b goes back; the name of a step goes there.";
  }

  static String missing(List<String> missing) {
    return missing.isEmpty()
        ? "Nothing is missing."
        : "Nothing is recorded of: " + String.join("; ", missing) + ".";
  }

  /** Returns what contradicts in answers; the lines of a note are named by their steps. */
  static List<String> contradicted(List<Fault> faults, EntryAnswers answers) {
    return Stream.concat(
            Stream.of("  not taken, for it contradicts what was said before:"),
            faults.stream().map(fault -> "  " + fault.seen() + ": " + named(fault, answers)))
        .toList();
  }

  private static String named(Fault fault, EntryAnswers answers) {
    return LINE.matcher(fault.wanted())
        .replaceAll(
            found ->
                Matcher.quoteReplacement(
                    "under " + StepReader.title(answers.step(Integer.parseInt(found.group(1))))));
  }

  /** Returns what was recorded, in the words of a letter, the same of either eye in one line. */
  static List<String> recorded(List<Fact<?>> facts, Header header) {
    Map<String, Set<Eyes>> lines = new LinkedHashMap<>();
    for (Fact<?> fact : facts) {
      String text = fact.finding().title() + ": " + FactText.of(fact, header.performed());
      lines
          .computeIfAbsent(text, any -> EnumSet.noneOf(Eyes.class))
          .add(Eyes.of(fact.finding(), fact.site()));
    }
    List<String> recorded = new ArrayList<>();
    lines.forEach(
        (text, eyes) ->
            Eyes.joined(eyes).forEach(one -> recorded.add("  recorded" + of(one) + ": " + text)));
    return recorded;
  }

  private static String of(Eyes eyes) {
    return eyes.words().isEmpty() ? "" : ", " + eyes.words();
  }

  /** Returns what contradicts, is incomplete or implausible: a line for each rule and wish. */
  static List<String> lookAgain(List<Violation> violations) {
    Map<String, List<String>> seen = new LinkedHashMap<>();
    for (Violation violation : violations) {
      String wish = "; %s (%s)".formatted(violation.wanted(), violation.rule());
      seen.computeIfAbsent(wish, any -> new ArrayList<>()).add(violation.seen());
    }
    List<String> lines = new ArrayList<>();
    seen.forEach((wish, all) -> lines.add("  look again: " + String.join(", ", all) + wish));
    return lines;
  }

  /** Returns an answer that was not read, and what it may mean. */
  static List<String> question(Unread unread) {
    List<String> lines = new ArrayList<>();
    lines.add("  not read: \"" + unread.text() + "\": " + unread.why());
    if (unread.readings().isEmpty()) {
      lines.add("  " + unread.form());
    }
    int number = 0;
    for (PossibleReading reading : unread.readings()) {
      number++;
      lines.add("  " + number + " = " + reading.choice() + ": " + reading.text());
    }
    return lines;
  }
}
