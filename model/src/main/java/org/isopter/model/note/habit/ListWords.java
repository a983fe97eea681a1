package org.isopter.model.note.habit;

import org.isopter.model.note.token.Token;

/**
 * The words that deny a list of signs and join its last member: no ptosis, proptosis or lid lag.
 */
public final class ListWords {

  private ListWords() {}

  public static boolean isDenial(Token token) {
    return StandardPhrases.DENIAL.contains(token.text());
  }

  public static boolean isOr(Token token) {
    return StandardPhrases.OR.contains(token.text());
  }
}
