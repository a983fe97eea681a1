package org.isopter.model.note.token;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Reads one thing from where the cursor stands, or leaves it to others.
 *
 * @param <T> what it reads
 */
@FunctionalInterface
public interface Matcher<T> {

  /** Returns what stands here; the cursor is put back by the caller where there is nothing. */
  Optional<T> read(Cursor cursor);

  /** Returns the words that it knows, for the advice to those who mistype them. */
  default List<String> words() {
    return List.of();
  }

  /** Returns this, or the other where this reads nothing. */
  default Matcher<T> or(Matcher<? extends T> other) {
    List<String> all = Stream.concat(words().stream(), other.words().stream()).toList();
    return new Worded<>(cursor -> first(cursor, this, other), all);
  }

  /** Returns what this reads, changed. */
  default <R> Matcher<R> map(Function<? super T, ? extends R> change) {
    return new Worded<>(cursor -> read(cursor).map(change), words());
  }

  private static <T> Optional<T> first(Cursor cursor, Matcher<T> one, Matcher<? extends T> other) {
    Optional<T> found = cursor.attempt(one);
    return found.isPresent() ? found : cursor.attempt(other).map(Function.identity());
  }
}
