package org.isopter.model.note.habit;

import org.isopter.model.note.token.Token;

/**
 * The words that deny a list of signs and join its last member: no ptosis, proptosis or lid lag.
 */
public final class ListWords {

  private ListWords() {}

  /** Says whether a word denies what follows: no, without. */
  public static boolean isDenial(Token token) {
    return StandardPhrases.DENIAL.contains(token.text());
  }

  /** Says whether a word joins what may be one or the other. */
  public static boolean isOr(Token token) {
    return StandardPhrases.OR.contains(token.text());
  }
}
