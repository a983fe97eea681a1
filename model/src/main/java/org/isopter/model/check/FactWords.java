package org.isopter.model.check;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.shape.Layout;
import org.isopter.model.shape.Panel;
import org.isopter.model.shape.Texts;

/** The words for a fact in a message, and its path in a record. */
final class FactWords {

  private FactWords() {}

  /** Returns eye, finding, value and parts as a record writes them. */
  static String of(Fact<?> fact) {
    String name = fact.site().word() + " " + fact.finding().id();
    return fact.outcome()
        .ifAbsent()
        .map(reason -> name + " absent (" + reason.word() + ")")
        .orElseGet(() -> name + " " + value(fact.finding().layout(), fact.panel().orElseThrow()));
  }

  /** Returns the path of the entry in a record; entries of one eye are told apart by number. */
  static String path(Exam exam, Fact<?> fact) {
    List<Fact<?>> entries =
        exam.facts().stream()
            .filter(one -> one.finding() == fact.finding() && one.site() == fact.site())
            .toList();
    String path = "findings." + fact.finding().id() + "." + fact.site().word();
    return entries.size() == 1 ? path : path + "[" + position(entries, fact) + "]";
  }

  private static int position(List<Fact<?>> entries, Fact<?> fact) {
    int position = 0;
    // Equal entries are still two: a repeated reading is a fact of its own.
    while (!isSame(entries.get(position), fact)) {
      position++;
    }
    return position;
  }

  @SuppressWarnings("ReferenceEquality")
  private static boolean isSame(Fact<?> one, Fact<?> other) {
    return one == other;
  }

  private static String value(Layout<?> layout, Panel panel) {
    List<String> parts = new ArrayList<>();
    panel
        .parts()
        .forEach(
            (key, outcome) ->
                parts.add(
                    key
                        + " "
                        + outcome.<String>fold(Texts::of, reason -> "absent: " + reason.word())));
    String all = String.join(", ", parts);
    return panel.value().isEmpty()
        ? all
        : alone(layout, panel) + (parts.isEmpty() ? "" : " (" + all + ")");
  }

  private static String alone(Layout<?> layout, Panel panel) {
    return panel.notation().isPresent()
        ? layout.writeChoice(panel)
        : panel.value().map(Texts::of).orElse("");
  }
}
