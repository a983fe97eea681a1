package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;

/**
 * The scales of reading tests that stand behind an acuity at distance in French and German notes:
 * {@code 10/10 P2}, {@code 0,8 Nieden 3}. No published size of their letters is known to this
 * library, so that the record has no place for them.
 */
final class NearScales {

  static final String WHY = "the record has no place for this scale of near acuity";

  private static final Set<String> NAMES = Set.of("p", "parinaud", "nieden", "nd");

  private NearScales() {}

  /** Returns how many tokens from a place on are such a size behind an acuity; 0 where none is. */
  static int behindAcuity(List<Token> clause, int at) {
    if (!isName(clause, at) || !isAcuity(clause, at - 1)) {
      return 0;
    }
    Cursor cursor = new Cursor(clause, at + 2);
    int end = cursor.attempt(Common.AT_DISTANCE).isPresent() ? cursor.place() : at + 2;
    return end - at;
  }

  /**
   * Returns a clause without its near sizes as that of an acuity in tenths where it starts with an
   * eye: {@code OD 10/10 P2}. A scale of French reading tests stands beside no other acuity.
   */
  static List<Token> withHeading(List<Token> clause, Token size) {
    Token first = clause.get(0);
    boolean bare =
        (size.is("p") || size.is("parinaud"))
            && Common.side(first).isPresent()
            && clause.stream().noneMatch(token -> token.is("va"))
            && !isLens(clause);
    if (!bare) {
      return clause;
    }
    int start = clause.size() > 1 && clause.get(1).is(":") ? 2 : 0;
    List<Token> headed = new ArrayList<>(clause.subList(0, start));
    for (String word : List.of("va", "tenths")) {
      headed.add(Token.unwritten(word, first));
    }
    headed.addAll(clause.subList(start, clause.size()));
    return headed;
  }

  /** Says whether a power with its sign stands behind the eye: what follows is seen through it. */
  private static boolean isLens(List<Token> clause) {
    Cursor cursor = new Cursor(clause, 1);
    cursor.take(":");
    return cursor.sees("-") || cursor.sees("+");
  }

  private static boolean isName(List<Token> clause, int at) {
    return NAMES.contains(clause.get(at).text())
        && at + 1 < clause.size()
        && clause.get(at + 1).isNumber()
        && (at + 2 == clause.size() || !clause.get(at + 2).is("/"));
  }

  /** Says whether a number with a stroke before it, or with decimals, stands at a place. */
  private static boolean isAcuity(List<Token> clause, int at) {
    return at > 0
        && clause.get(at).isNumber()
        && (clause.get(at - 1).is("/") || clause.get(at).text().contains("."));
  }
}
