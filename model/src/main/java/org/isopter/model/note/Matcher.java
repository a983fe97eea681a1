package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Reads one thing from where the cursor stands, or leaves it to others.
 *
 * @param <T> what it reads
 */
@FunctionalInterface
interface Matcher<T> {

  /** Returns what stands here; the cursor is put back by the caller where there is nothing. */
  Optional<T> read(Cursor cursor);

  /** Returns the words that it knows, for the advice to those who mistype them. */
  default List<String> words() {
    return List.of();
  }

  /** Returns this, or the other where this reads nothing. */
  default Matcher<T> or(Matcher<? extends T> other) {
    return cursor -> {
      Optional<T> mine = cursor.attempt(this);
      return mine.isPresent() ? mine : cursor.attempt(other).map(Function.identity());
    };
  }

  /** Returns what this reads, changed. */
  default <R> Matcher<R> map(Function<? super T, ? extends R> change) {
    return cursor -> read(cursor).map(change);
  }
}
