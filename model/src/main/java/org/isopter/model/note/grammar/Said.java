package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;

/** What was said in the slots of an item or of one eye, each with its place. */
public final class Said {

  /**
   * One thing that was said.
   *
   * @param value what it means
   * @param at where it starts
   * @param seen its words
   * @param afterComma whether a comma sets it off from its side
   * @param <T> the type of the value
   */
  record Entry<T>(T value, Token at, String seen, boolean afterComma) {}

  private final Map<Slot<?>, List<Entry<?>>> entries = new LinkedHashMap<>();

  <T> void put(Slot<T> slot, Entry<T> entry) throws NotRead {
    List<Entry<?>> list = entries.computeIfAbsent(slot, any -> new ArrayList<>());
    if (isAlike(slot, List.of(entry))) {
      return;
    }
    if (!list.isEmpty() && slot.role() != Slot.Role.VALUES) {
      throw NotRead.at(entry.at(), "the " + slot.name() + " is said twice in one place");
    }
    list.add(entry);
  }

  /** Adds everything that the other said. */
  void putAll(Said other) throws NotRead {
    for (Slot<?> slot : other.slots()) {
      copy(slot, other);
    }
  }

  /** Adds what the other said in a slot. */
  void copy(Slot<?> slot, Said other) throws NotRead {
    boolean twice = has(slot) && slot.role() != Slot.Role.VALUES;
    List<Entry<?>> more = other.entries.getOrDefault(slot, List.of());
    if (isAlike(slot, more)) {
      return;
    }
    if (twice && !more.isEmpty()) {
      throw NotRead.at(more.get(0).at(), "the " + slot.name() + " is said twice in one place");
    }
    entries.computeIfAbsent(slot, any -> new ArrayList<>()).addAll(more);
  }

  /** Says whether a condition was said before in the same sense. */
  private boolean isAlike(Slot<?> slot, List<? extends Entry<?>> more) {
    List<Entry<?>> before = entries.getOrDefault(slot, List.of());
    return slot.isCondition()
        && before.size() == 1
        && more.size() == 1
        && before.get(0).value().equals(more.get(0).value());
  }

  /** Returns the conditions, for the next clause of the same item. */
  Said conditions() throws NotRead {
    Said conditions = new Said();
    for (Slot<?> slot : slots()) {
      if (slot.isCondition()) {
        conditions.copy(slot, this);
      }
    }
    return conditions;
  }

  /** Returns the conditions that stand before the first value. */
  Said conditionsBeforeValues() throws NotRead {
    int first =
        slots().stream()
            .filter(slot -> !slot.isCondition())
            .mapToInt(slot -> place(slot).start())
            .min()
            .orElse(0);
    Said before = new Said();
    for (Slot<?> slot : slots()) {
      if (slot.isCondition() && place(slot).start() < first) {
        before.copy(slot, this);
      }
    }
    return before;
  }

  /** Returns what a comma sets off from the side; where there is no comma, all of it. */
  Said afterComma() throws NotRead {
    boolean comma = slots().stream().anyMatch(this::isAfterComma);
    Said rest = new Said();
    for (Slot<?> slot : slots()) {
      if (!comma || isAfterComma(slot)) {
        rest.copy(slot, this);
      }
    }
    return rest;
  }

  /** Returns what starts between two places of the note. */
  Said between(int from, int to) {
    Said part = new Said();
    entries.forEach(
        (slot, all) -> {
          List<Entry<?>> some =
              all.stream()
                  .filter(one -> one.at().start() >= from && one.at().start() < to)
                  .toList();
          if (!some.isEmpty()) {
            part.entries.put(slot, new ArrayList<>(some));
          }
        });
    return part;
  }

  /** Returns the slots that are no conditions. */
  Set<Slot<?>> values() {
    return slots().stream().filter(slot -> !slot.isCondition()).collect(Collectors.toSet());
  }

  /** Returns this without what the other says. */
  Said without(Said other) throws NotRead {
    Said rest = new Said();
    for (Slot<?> slot : slots()) {
      if (!other.has(slot)) {
        rest.copy(slot, this);
      }
    }
    return rest;
  }

  /** Returns this with all that the later words say instead. */
  Said overriddenBy(Said later) throws NotRead {
    Said all = new Said();
    all.entries.putAll(later.entries);
    for (Slot<?> slot : slots()) {
      if (!later.has(slot)) {
        all.copy(slot, this);
      }
    }
    return all;
  }

  /** Says whether anything was said in a slot. */
  public boolean has(Slot<?> slot) {
    return entries.containsKey(slot);
  }

  boolean isEmpty() {
    return entries.isEmpty();
  }

  boolean hasValues() {
    return slots().stream().anyMatch(slot -> !slot.isCondition());
  }

  boolean hasValuesOfEyes() {
    return slots().stream()
        .anyMatch(slot -> !slot.isCondition() && slot.role() != Slot.Role.VALUE_OF_PAIR);
  }

  /** Returns the values of the two eyes together. */
  Said ofPair() throws NotRead {
    Said pair = new Said();
    for (Slot<?> slot : slots()) {
      if (slot.role() == Slot.Role.VALUE_OF_PAIR) {
        pair.copy(slot, this);
      }
    }
    return pair;
  }

  List<Slot<?>> slots() {
    return List.copyOf(entries.keySet());
  }

  Token place(Slot<?> slot) {
    return entries.getOrDefault(slot, List.of()).get(0).at();
  }

  /** Returns the words of what was said in a slot. */
  String words(Slot<?> slot) {
    return entries.getOrDefault(slot, List.of()).stream()
        .map(Entry::seen)
        .collect(Collectors.joining(" "));
  }

  /** Says whether no value stands behind what was said in a slot. */
  boolean isBehindValues(Slot<?> slot) {
    return slots().stream()
        .filter(other -> !other.isCondition())
        .noneMatch(other -> place(other).start() > place(slot).start());
  }

  /** Says whether a value stands before what was said in a slot. */
  boolean isBehindValue(Slot<?> slot) {
    return slots().stream()
        .filter(other -> !other.isCondition())
        .anyMatch(other -> place(other).start() < place(slot).start());
  }

  boolean isAfterComma(Slot<?> slot) {
    return entries.getOrDefault(slot, List.of()).stream().anyMatch(Entry::afterComma);
  }

  /** Returns the first that was said in a slot, if anything was. */
  public <T> Optional<T> find(Slot<T> slot) {
    return all(slot).stream().findFirst();
  }

  @SuppressWarnings("unchecked") // Only put fills a slot, with what its matcher reads.
  <T> List<T> all(Slot<T> slot) {
    return entries.getOrDefault(slot, List.of()).stream().map(entry -> (T) entry.value()).toList();
  }
}
