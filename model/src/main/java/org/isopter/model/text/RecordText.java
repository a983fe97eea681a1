package org.isopter.model.text;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;

/** The words for a fact in a message, and its path in a record. */
public final class RecordText {

  private RecordText() {}

  /** Returns eye, finding, value, parts, technique and own time as a record writes them. */
  public static String of(Fact<?> fact) {
    FactWords words = FactWords.of(fact, FactStyle.RECORD);
    List<String> head = new ArrayList<>(List.of(fact.site().word(), fact.finding().id()));
    head.addAll(words.outcome());
    List<String> details = new ArrayList<>(words.parts());
    details.addAll(words.context());
    return String.join(" ", head)
        + (details.isEmpty() ? "" : " (" + String.join(", ", details) + ")");
  }

  /** Returns the path of the entry in a record; entries of one eye are told apart by number. */
  public static String path(Exam exam, Fact<?> fact) {
    List<Fact<?>> entries =
        exam.view().eye(fact.site()).facts(fact.finding()).<Fact<?>>map(one -> one).toList();
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
}
