package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Concept;

/**
 * The phrases that stand for the values of a list; the longest phrase that fits is read.
 *
 * @param <T> the type of the values
 */
public final class PhraseTable<T> implements Matcher<T> {

  private record Row<T>(String spoken, List<String> phrase, T value) {}

  private static final Comparator<Row<?>> LONGEST_FIRST =
      Comparator.comparing((Row<?> row) -> row.phrase().size()).reversed();

  private final List<Row<T>> rows = new ArrayList<>();
  private final Map<String, List<Row<T>>> byFirst = new HashMap<>();
  private final Map<T, String> written = new HashMap<>();

  private PhraseTable() {}

  /** Returns a vocabulary of no words. */
  public static <T> PhraseTable<T> empty() {
    return new PhraseTable<>();
  }

  /** Returns a vocabulary in which each constant is called by its word. */
  public static <E extends Enum<E> & Concept> PhraseTable<E> of(Class<E> type) {
    PhraseTable<E> words = new PhraseTable<>();
    for (E constant : type.getEnumConstants()) {
      words.say(constant, constant.word());
    }
    return words;
  }

  /** Adds phrases for a value; its first phrase is the one that is written. */
  public PhraseTable<T> say(T value, String... phrases) {
    for (String phrase : phrases) {
      Row<T> row = new Row<>(phrase, Lexer.words(phrase), value);
      rows.add(row);
      List<Row<T>> alike = byFirst.computeIfAbsent(row.phrase().get(0), x -> new ArrayList<>());
      alike.add(row);
      alike.sort(LONGEST_FIRST);
      written.putIfAbsent(value, phrase.replace('-', ' '));
    }
    rows.sort(LONGEST_FIRST);
    return this;
  }

  /** Returns all phrases for a value, as they were added. */
  public List<String> phrases(T value) {
    return rows.stream().filter(row -> row.value().equals(value)).map(Row::spoken).toList();
  }

  /** Returns the phrase that is written for a value. */
  public String phrase(T value) {
    return Optional.ofNullable(written.get(value)).orElseThrow();
  }

  @Override
  public Optional<T> read(Cursor cursor) {
    if (cursor.atEnd()) {
      return Optional.empty();
    }
    for (Row<T> row : byFirst.getOrDefault(cursor.token().text(), List.of())) {
      if (cursor.take(row.phrase())) {
        return Optional.of(row.value());
      }
    }
    return Optional.empty();
  }

  @Override
  public List<String> words() {
    return rows.stream().map(Row::spoken).toList();
  }
}
