package org.isopter.model.note;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Whether words that were not read may have named an eye: then the eye that was named before no
 * longer holds for what follows.
 */
final class UnknownSide {

  /** Abbreviations of an eye have at most so many letters. */
  private static final int SHORT = 4;

  private static final Set<String> KNOWN = known();

  private UnknownSide() {}

  /** An unknown word may be a side at the start, before a colon, or where it is short. */
  static boolean mayBeIn(List<Token> tokens) {
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      boolean unknown = token.kind() == Token.Kind.WORD && !KNOWN.contains(token.text());
      if (unknown && (i == 0 || token.text().length() <= SHORT || isBeforeColon(tokens, i))) {
        return true;
      }
    }
    return false;
  }

  private static boolean isBeforeColon(List<Token> tokens, int i) {
    return i + 1 < tokens.size() && (tokens.get(i + 1).is(":") || tokens.get(i + 1).is("="));
  }

  private static Set<String> known() {
    Set<String> words = new HashSet<>();
    Stream.concat(Grammars.ALL.stream().flatMap(Grammar::words), Common.SIDES.words().stream())
        .forEach(phrase -> words.addAll(Lexer.words(phrase)));
    return words;
  }
}
