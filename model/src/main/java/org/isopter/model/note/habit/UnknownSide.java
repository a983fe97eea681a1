package org.isopter.model.note.habit;

import java.util.List;
import org.isopter.model.note.token.Token;

/**
 * Whether words that were not read may have named an eye: then the eye that was named before no
 * longer holds for what follows.
 */
public final class UnknownSide {

  /** Abbreviations of an eye have at most so many letters. */
  private static final int SHORT = 4;

  /** No word for a side in any language that is written here has as many letters. */
  private static final int LONG = 12;

  private UnknownSide() {}

  /** An unknown word may be a side at the start, before a colon, or where it is short. */
  public static boolean mayBeIn(List<Token> tokens) {
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      boolean unknown = isUnknown(token);
      if (unknown
          && ((i == 0 && token.text().length() < LONG)
              || token.text().length() <= SHORT
              || isBeforeColon(tokens, i))) {
        return true;
      }
    }
    return false;
  }

  static boolean isUnknown(Token token) {
    return token.kind() == Token.Kind.WORD && !StandardPhrases.BOOK.knows(token.text());
  }

  private static boolean isBeforeColon(List<Token> tokens, int i) {
    return i + 1 < tokens.size() && (tokens.get(i + 1).is(":") || tokens.get(i + 1).is("="));
  }
}
