package org.isopter.model.note.grammar;

import java.util.List;
import org.isopter.model.note.token.Lexer;

/**
 * A phrase that an item starts with.
 *
 * @param spoken the phrase as it is written
 * @param phrase its words
 * @param kept whether it says something itself, so that a slot reads it again
 * @param plural whether it names the part of both eyes, such as discs
 * @param floating whether something may stand before it: no RAPD, swollen disc
 */
public record Heading(
    String spoken, List<String> phrase, boolean kept, boolean plural, boolean floating) {

  /** Returns a heading of these words, as people write them. */
  public static Heading of(String phrase) {
    return new Heading(phrase, Lexer.words(phrase), false, false, false);
  }

  /** Returns this heading, whose words also say something of the value. */
  public Heading keptAsWord() {
    return new Heading(spoken, phrase, true, plural, floating);
  }

  /** Returns this heading, which speaks of both eyes. */
  public Heading ofBothEyes() {
    return new Heading(spoken, phrase, kept, true, floating);
  }

  /** Returns this heading, which may also stand behind the words it is about. */
  public Heading afterWords() {
    return new Heading(spoken, phrase, kept, plural, true);
  }
}
