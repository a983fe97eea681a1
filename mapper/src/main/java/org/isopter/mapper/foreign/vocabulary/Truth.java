package org.isopter.mapper.foreign.vocabulary;

import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.json.Raw;

/** True or false as the value of an observation or a component. */
public final class Truth {

  private Truth() {}

  /** Returns what a word of yes or no says. */
  public static Optional<Boolean> ofWord(String word) {
    return switch (Habits.plain(word)) {
      case "yes", "true", "y" -> Optional.of(true);
      case "no", "false", "n" -> Optional.of(false);
      default -> Optional.empty();
    };
  }

  /** Returns the {@code valueBoolean} of a holder; nothing where it has none that is one. */
  public static Optional<Boolean> of(Place holder) {
    return holder
        .child("valueBoolean")
        .map(Place::value)
        .filter(value -> value instanceof Raw.Leaf leaf && leaf.kind() == Raw.Kind.TRUTH)
        .map(value -> ((Raw.Leaf) value).text().equals("true"));
  }
}
