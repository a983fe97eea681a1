package org.isopter.model.note;

import java.util.Optional;

/** An item cannot be read; carries where, why, and what would have been understood. */
final class NotRead extends Exception {

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
  static NotRead word(Token token) {
    String why = "\"" + token.seen() + "\" is not understood here";
    return new NotRead(Optional.of(token), why, Optional.empty(), true);
  }

  static NotRead at(Token token, String why) {
    return new NotRead(Optional.of(token), why, Optional.empty(), false);
  }

  static NotRead because(String why) {
    return new NotRead(Optional.empty(), why, Optional.empty(), false);
  }

  NotRead write(String form) {
    return new NotRead(at, why(), Optional.of(form), word);
  }

  /** Returns this at a place, unless it has one. */
  NotRead orAt(Token token) {
    return new NotRead(at.or(() -> Optional.of(token)), why(), nearest, word);
  }

  /** Says whether one word is all that stands in the way. */
  boolean isWord() {
    return word;
  }

  Optional<Token> at() {
    return at;
  }

  String why() {
    return String.valueOf(getMessage());
  }

  Optional<String> nearest() {
    return nearest;
  }
}
