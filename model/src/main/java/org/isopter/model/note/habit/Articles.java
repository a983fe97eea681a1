package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.LowerCase;

/**
 * Keeps articles of French and Spanish apart from the eyes that they are written like: {@code Le
 * champ visuel} is not of the left eye (LE), {@code LA PIO ES DE 14} not of the left one in German
 * (LA). Beside the right eye (RE, R) it is the left one.
 */
final class Articles {

  /** An article in capitals, which may name an eye: no word that is read. */
  private static final String UNCLEAR = "le/la";

  private static final Set<String> RIGHT = Set.of("re", "r", "rt");

  private Articles() {}

  /**
   * Returns the tokens of a note without the articles before a word, and with those that may be an
   * eye as a word that nothing reads.
   *
   * @param languages the languages of the phrases of the note
   */
  static List<Token> apart(List<Token> note, Set<String> languages) {
    // A note that is in English too may mean the left eye.
    boolean french = languages.contains("fr") && !languages.contains("en");
    if (!languages.contains("fr") && !languages.contains("es")) {
      return note;
    }
    boolean fellow = note.stream().anyMatch(Articles::namesRightEye);
    boolean capitals = !fellow && note.stream().noneMatch(Articles::hasSmallLetter);
    List<Token> apart = new ArrayList<>();
    for (int i = 0; i < note.size(); i++) {
      Token token = note.get(i);
      boolean word = i + 1 < note.size() && note.get(i + 1).kind() == Token.Kind.WORD;
      boolean small = hasSmallLetter(token);
      boolean le = word && ((small && !fellow) || capitals) && token.seen().equalsIgnoreCase("le");
      boolean la = word && capitals && token.seen().equals("LA");
      boolean article = le && small && french;
      if (!article) {
        apart.add(le || la ? token.saying(UNCLEAR) : token);
      }
    }
    return List.copyOf(apart);
  }

  /** Says whether the right eye is written as in English, alone or in a phrase: VA RE. */
  private static boolean namesRightEye(Token token) {
    return Lexer.words(LowerCase.of(token.seen())).stream().anyMatch(RIGHT::contains);
  }

  private static boolean hasSmallLetter(Token token) {
    return token.seen().chars().anyMatch(Character::isLowerCase);
  }
}
