package org.isopter.model.note.token;

import java.util.Optional;

/** An item cannot be read; carries where, why, and what would have been understood. */
public final class NotRead extends Exception {

  /** What a phrase means that is understood and for which the record has no place. */
  public static final String NO_PLACE = "unrecordable";

  private static final long serialVersionUID = 1L;

  private final transient Optional<Token> at;
  private final transient Optional<String> nearest;

  private final boolean word;

  private NotRead(Optional<Token> at, String why, Optional<String> nearest, boolean word) {
    super(why, null, false, false);
    this.at = at;
    this.nearest = nearest;
    this.word = word;
  }

  /** Returns that a word means nothing where it stands. */
  public static NotRead word(Token token) {
    String why = "\"" + token.seen() + "\" is not understood here";
    return new NotRead(Optional.of(token), why, Optional.empty(), true);
  }

  /** Returns that an item is not read, because of the token. */
  public static NotRead at(Token token, String why) {
    return new NotRead(Optional.of(token), why, Optional.empty(), false);
  }

  /** Returns that an item is not read, because of no one token. */
  public static NotRead because(String why) {
    return new NotRead(Optional.empty(), why, Optional.empty(), false);
  }

  /** Returns this with a form that would be read. */
  public NotRead write(String form) {
    return new NotRead(at, why(), Optional.of(form), word);
  }

  /** Returns this at a place, unless it has one. */
  public NotRead orAt(Token token) {
    return new NotRead(at.or(() -> Optional.of(token)), why(), nearest, word);
  }

  /** Says whether one word is all that stands in the way. */
  public boolean isWord() {
    return word;
  }

  /** Returns the token that stands in the way, where it is one. */
  public Optional<Token> at() {
    return at;
  }

  /** Returns why it is not read, as a sentence. */
  public String why() {
    return String.valueOf(getMessage());
  }

  /** Returns a form that would be read, where one is near. */
  public Optional<String> nearest() {
    return nearest;
  }
}
