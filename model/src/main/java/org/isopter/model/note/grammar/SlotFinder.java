package org.isopter.model.note.grammar;

import java.util.Optional;
import org.isopter.model.note.token.Cursor;

/**
 * Finds the slot of a grammar that reads most of what stands at a place; the cursor stays there.
 *
 * @param grammar the grammar of the item
 * @param cursor the place
 */
record SlotFinder(Grammar grammar, Cursor cursor) {

  /** Returns the slot that reads most, if any reads. */
  Optional<Slot<?>> longest() {
    int start = cursor.place();
    int farthest = start;
    Optional<Slot<?>> best = Optional.empty();
    for (Slot<?> slot : grammar.slots()) {
      if (cursor.attempt(slot.matcher()).isPresent() && cursor.place() > farthest) {
        farthest = cursor.place();
        best = Optional.of(slot);
      }
      cursor.back(start);
    }
    return best;
  }

  /** Says whether any slot reads. */
  boolean read() {
    return longest().isPresent();
  }

  /** Returns up to where a slot reads. */
  int end(Slot<?> slot) {
    int start = cursor.place();
    cursor.attempt(slot.matcher());
    int end = cursor.place();
    cursor.back(start);
    return end;
  }
}
