package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.token.Token;

/**
 * Takes D and G in French, D and I in Spanish, for right and left where both stand before the
 * values of one clause: {@code PIO D 14 G 16}. A lone one may be anything (dioptres, a distance, a
 * grade) and stays as it is, and so do both beside another word for a side.
 */
final class SideLetters {

  private static final String RIGHT = "d";

  /** Headings that French and Spanish write alike. */
  private static final Set<String> EITHER = Set.of("AV", "PIO");

  private SideLetters() {}

  /**
   * Returns the tokens with the sides that the letters stand for.
   *
   * @param languages the languages of the phrases of the note
   */
  static List<Token> read(List<Token> tokens, Set<String> languages) {
    List<Token> out = new ArrayList<>(tokens);
    List<String> lefts = lefts(tokens, languages);
    int from = 0;
    for (int i = 0; i <= tokens.size() && !lefts.isEmpty(); i++) {
      if (i == tokens.size() || tokens.get(i).kind() == Token.Kind.BREAK) {
        List<Token> clause = out.subList(from, i);
        lefts.forEach(left -> clause(clause, left));
        from = i + 1;
      }
    }
    return List.copyOf(out);
  }

  /** Returns the letters that the left eye may have in the languages of the note. */
  private static List<String> lefts(List<Token> tokens, Set<String> languages) {
    boolean french = languages.contains("fr");
    boolean spanish = languages.contains("es");
    if (french != spanish) {
      return List.of(french ? "g" : "i");
    }
    boolean either = tokens.stream().anyMatch(token -> EITHER.contains(token.seen()));
    return either ? List.of("g", "i") : List.of();
  }

  private static void clause(List<Token> clause, String left) {
    List<Integer> right = places(clause, RIGHT);
    List<Integer> other = places(clause, left);
    boolean pairs = right.size() == other.size() && !right.isEmpty();
    if (pairs && clause.stream().noneMatch(OtherTimes::isSide)) {
      right.forEach(place -> clause.set(place, clause.get(place).saying("r")));
      other.forEach(place -> clause.set(place, clause.get(place).saying("l")));
    }
  }

  /** Returns where a letter stands before a value, the right one not behind a number: -1,25 D. */
  private static List<Integer> places(List<Token> clause, String letter) {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < clause.size(); i++) {
      Token token = clause.get(i);
      boolean capital = token.is(letter) && !token.seen().equals(letter);
      boolean unit = letter.equals(RIGHT) && i > 0 && clause.get(i - 1).isNumber();
      if (capital && !unit && isValue(clause, i + 1)) {
        places.add(i);
      }
    }
    return places;
  }

  private static boolean isValue(List<Token> clause, int at) {
    int value = at < clause.size() && clause.get(at).is(":") ? at + 1 : at;
    return value < clause.size() && clause.get(value).isNumber();
  }
}
