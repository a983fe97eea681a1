package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;

/**
 * A fact and the item that tells it.
 *
 * @param fact the fact
 * @param at where the item starts
 * @param item the item, word for word
 */
record Told(Fact<?> fact, Token at, String item) {

  boolean sameItem(Told other) {
    return at.start() == other.at.start();
  }

  /** Says whether the two speak of one thing and do not say the same. */
  boolean contradicts(Told other) {
    return isAbout(other) && !fact.equals(other.fact);
  }

  private boolean isAbout(Told other) {
    boolean same =
        fact.finding() == other.fact.finding()
            && fact.site() == other.fact.site()
            && fact.at().equals(other.fact.at());
    boolean bothFound = fact.panel().isPresent() && other.fact.panel().isPresent();
    return same && (!bothFound || marks(fact).equals(marks(other.fact)));
  }

  /** Returns what tells two facts of one eye apart; two techniques are two measurements. */
  private static List<Object> marks(Fact<?> fact) {
    List<Object> marks = new ArrayList<>();
    marks.add(fact.method());
    for (String part : fact.finding().distinguishing()) {
      marks.add(fact.panel().flatMap(panel -> panel.found(part)).map(DatumTexts::of));
    }
    return marks;
  }

  /** Returns the value and its parts in a few words. */
  String words() {
    return fact.panel()
        .map(this::words)
        .or(() -> fact.outcome().ifAbsent().map(Words::of))
        .orElseThrow();
  }

  private String words(EncodedValue panel) {
    StringJoiner words = new StringJoiner(", ");
    boolean choice = fact.finding().layout().choice().isPresent();
    if (choice) {
      words.add(fact.finding().layout().writeChoice(panel));
    } else {
      panel.value().map(DatumTexts::of).ifPresent(words::add);
    }
    panel
        .parts()
        .forEach(
            (part, outcome) -> words.add(part + " " + outcome.fold(DatumTexts::of, Words::of)));
    return words.toString();
  }

  Optional<Told> firstContradicted(List<Told> others) {
    return others.stream().filter(this::contradicts).findFirst();
  }
}
