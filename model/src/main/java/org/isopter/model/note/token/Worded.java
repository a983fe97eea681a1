package org.isopter.model.note.token;

import java.util.List;
import java.util.Optional;

/**
 * A matcher that still knows the words of those it was made from.
 *
 * @param matcher what reads
 * @param words the words that it knows
 * @param <T> what it reads
 */
public record Worded<T>(Matcher<T> matcher, List<String> words) implements Matcher<T> {

  @Override
  public Optional<T> read(Cursor cursor) {
    return matcher.read(cursor);
  }
}
