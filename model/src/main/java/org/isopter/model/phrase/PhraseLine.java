package org.isopter.model.phrase;

import java.util.List;

/**
 * A line of a file of phrases.
 *
 * @param line its number, from 1
 * @param kind what kind of line it is, in one word
 * @param meaning what the phrases stand for
 * @param language the language of the phrases as in BCP 47, or {@code -} for any
 * @param phrases what people write; at least one
 * @param source where it is published, or {@code common practice, no source}
 */
public record PhraseLine(
    int line, String kind, String meaning, String language, List<String> phrases, String source) {

  public PhraseLine {
    phrases = List.copyOf(phrases);
  }

  /** Returns the same phrases with another meaning. */
  public PhraseLine standingFor(String other) {
    return new PhraseLine(line, kind, other, language, phrases, source);
  }

  /** Returns where the line stands: {@code line 3}. */
  public String place() {
    return "line " + line;
  }
}
