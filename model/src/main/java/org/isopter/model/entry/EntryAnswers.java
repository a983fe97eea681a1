package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.isopter.model.exam.Fact;

/**
 * What was answered, by the number of the step from 0; the number behind the last step is for all
 * that no step asks for.
 */
final class EntryAnswers {

  static final int MORE = UsualStep.ASKED.size();

  private final TreeMap<Integer, List<String>> lines = new TreeMap<>();

  /** Returns answers that change apart from these. */
  EntryAnswers copy() {
    EntryAnswers copy = new EntryAnswers();
    lines.forEach((step, all) -> copy.lines.put(step, new ArrayList<>(all)));
    return copy;
  }

  void put(int step, String line) {
    lines.put(step, new ArrayList<>(List.of(line)));
  }

  void add(int step, String line) {
    lines.computeIfAbsent(step, any -> new ArrayList<>()).add(line);
  }

  void remove(int step) {
    lines.remove(step);
  }

  boolean has(int step) {
    return lines.containsKey(step);
  }

  boolean isEmpty() {
    return lines.isEmpty();
  }

  /** Returns the number behind the last step that was answered. */
  int next() {
    return lines.isEmpty() ? 0 : Math.min(MORE, lines.lastKey() + 1);
  }

  /** Returns the answers to a step on one line. */
  String of(int step) {
    return String.join("; ", lines.getOrDefault(step, List.of()));
  }

  /** Returns all answers in shorthand, an answer a line. */
  String note() {
    return lines.values().stream().flatMap(List::stream).collect(Collectors.joining("\n"));
  }

  /** Returns the step of a line of {@link #note}, from 1; the number behind the last for none. */
  int step(int line) {
    int before = 0;
    for (Map.Entry<Integer, List<String>> step : lines.entrySet()) {
      before += step.getValue().size();
      if (line <= before) {
        return step.getKey();
      }
    }
    return MORE;
  }

  /** Returns the lines of a draft: the key of the step, a tab, an answer. */
  String draft() {
    StringBuilder draft = new StringBuilder();
    for (Map.Entry<Integer, List<String>> step : lines.entrySet()) {
      for (String line : step.getValue()) {
        draft.append(key(step.getKey())).append('\t').append(line).append('\n');
      }
    }
    return draft.toString();
  }

  /** Returns the number of the step with this key; -1 where there is none. */
  static int step(String key) {
    return IntStream.rangeClosed(0, MORE).filter(i -> key(i).equals(key)).findFirst().orElse(-1);
  }

  private static String key(int step) {
    return step == MORE ? "more" : UsualStep.ASKED.get(step).question().key();
  }

  /**
   * Returns the step that asks for any of the facts, the one that is asked now before others; the
   * number behind the last where none does.
   */
  static int home(int asked, List<Fact<?>> facts) {
    return IntStream.concat(IntStream.of(asked), IntStream.range(0, MORE))
        .filter(step -> step < MORE && isOf(UsualStep.ASKED.get(step), facts))
        .findFirst()
        .orElse(MORE);
  }

  private static boolean isOf(UsualStep step, List<Fact<?>> facts) {
    return facts.stream().map(Fact::finding).anyMatch(step.findings()::contains);
  }
}
