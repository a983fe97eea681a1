package org.isopter.mapper.foreign.ledger;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Remembers what was read from a text: the same words of codes and body sites come with every
 * observation of a system. It holds no more than so many short texts.
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
