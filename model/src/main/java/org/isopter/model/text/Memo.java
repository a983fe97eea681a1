package org.isopter.model.text;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Remembers what was made of a text, where the same texts come again and again: the words of a code
 * with every observation of a system, a mistyped word with every form that is tried. It holds no
 * more than so many short texts.
 */
public final class Memo<V> {

  private static final int MOST = 5_000;
  private static final int LONGEST = 200;

  private final Function<String, V> reading;
  private final Map<String, V> known = new ConcurrentHashMap<>();

  public Memo(Function<String, V> reading) {
    this.reading = reading;
  }

  /** Returns what is read from the text. */
  public V of(String text) {
    if (text.length() > LONGEST || known.size() >= MOST) {
      V remembered = known.get(text);
      return remembered == null ? reading.apply(text) : remembered;
    }
    return known.computeIfAbsent(text, reading);
  }
}
