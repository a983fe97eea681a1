package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.NoteWriter;

/**
 * Puts facts into few words of shorthand. Every shorter form is tried first: it is used where it
 * reads as the same facts.
 */
final class ChartPacker {

  /** Phrases that say several facts, the longer ones first. */
  private static final List<String> PHRASES =
      Stream.concat(
              Stream.of("PERRLA", "PERRL", "PERLA"),
              Stream.concat(
                  UsualStep.ASKED.stream()
                      .map(step -> step.question().normal())
                      .filter(normal -> !normal.isEmpty()),
                  Stream.of("EOM full; no diplopia", "EOM full", "no diplopia", "no nystagmus")))
          .toList();

  /** What a writer writes in full, and what is written instead. */
  private static final Map<String, String> SHORTER = new LinkedHashMap<>();

  static {
    SHORTER.put(
        "up right gaze 0 up gaze 0 up left gaze 0 right gaze 0 left gaze 0 down right gaze 0 down"
            + " gaze 0 down left gaze 0",
        "full");
    SHORTER.put("ST full SN full IT full IN full central full", "full, central full");
    SHORTER.put("ST full SN full IT full IN full", "full");
    SHORTER.put("unaided", "sc");
    SHORTER.put("habitual", "cc");
    SHORTER.put("colour plates ishihara", "ishihara");
    SHORTER.put("goldmann", "GAT");
    SHORTER.put("non contact", "NCT");
    SHORTER.put("edition 14", "(14)");
    SHORTER.put("edition 24", "(24)");
    SHORTER.put("edition 38", "(38)");
    SHORTER.put("size ", "");
  }

  private final NoteWriter writer;
  private final NoteReader reader;

  ChartPacker(NoteWriter writer, NoteReader reader) {
    this.writer = writer;
    this.reader = reader;
  }

  /** An item and the facts that it says. */
  private record Item(String text, List<Fact<?>> facts) {}

  /** Returns the facts as lines of shorthand, those of one step on one line. */
  String pack(List<Fact<?>> facts) {
    List<Item> items = new ArrayList<>();
    List<Fact<?>> rest = phrases(facts, items);
    groups(rest).forEach(group -> items.add(shortest(group)));
    items.sort(Comparator.comparing(item -> facts.indexOf(item.facts().get(0))));
    return joined(items).stream().map(item -> item.text() + "\n").collect(Collectors.joining());
  }

  /** Takes what a phrase says and returns what is left. */
  private List<Fact<?>> phrases(List<Fact<?>> facts, List<Item> items) {
    List<Fact<?>> rest = new ArrayList<>(facts);
    for (String phrase : PHRASES) {
      List<Fact<?>> said = reader.read(phrase).facts();
      if (rest.containsAll(said)) {
        rest.removeAll(said);
        items.add(new Item(phrase, inOrder(facts, said)));
      }
    }
    return rest;
  }

  private static List<Fact<?>> inOrder(List<Fact<?>> facts, List<Fact<?>> some) {
    return facts.stream().filter(some::contains).toList();
  }

  /** Returns the lines of the writer, those that begin alike together. */
  private List<ChartGroup> groups(List<Fact<?>> facts) {
    Map<String, ChartGroup> groups = new LinkedHashMap<>();
    for (Fact<?> fact : facts) {
      String line = shorter(fact, writer.write(List.of(fact)).orThrow().strip());
      groups.computeIfAbsent(ChartGroup.lead(line), ChartGroup::new).add(line, fact);
    }
    return List.copyOf(groups.values());
  }

  private String shorter(Fact<?> fact, String line) {
    String text = line;
    for (Map.Entry<String, String> one : SHORTER.entrySet()) {
      String tried = text.replace(one.getKey(), one.getValue());
      text = !tried.equals(text) && says(tried, List.of(fact)) ? tried : text;
    }
    return text;
  }

  private Item shortest(ChartGroup group) {
    return group
        .forms()
        .filter(form -> says(form, group.facts()))
        .findFirst()
        .map(form -> new Item(form, group.facts()))
        .orElseGet(() -> new Item(group.lines(), group.facts()));
  }

  private boolean says(String text, List<Fact<?>> facts) {
    Note note = reader.read(text);
    return note.unread().isEmpty() && Set.copyOf(note.facts()).equals(Set.copyOf(facts));
  }

  /** Puts the items of one step on one line, where they read the same there. */
  private List<Item> joined(List<Item> items) {
    List<Item> lines = new ArrayList<>();
    for (Item item : items) {
      int last = lines.size() - 1;
      if (last >= 0 && step(lines.get(last)) == step(item)) {
        Item both = both(lines.get(last), item);
        if (says(both.text(), both.facts())) {
          lines.set(last, both);
          continue;
        }
      }
      lines.add(item);
    }
    return lines;
  }

  private static int step(Item item) {
    return EntryAnswers.home(EntryAnswers.MORE, item.facts());
  }

  private static Item both(Item one, Item other) {
    return new Item(
        one.text() + "; " + other.text(),
        Stream.<Fact<?>>concat(one.facts().stream(), other.facts().stream()).toList());
  }
}
