package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.token.Token;

/**
 * Joins an addition that stands in a sentence of its own to the refraction before it: {@code R
 * -2.00 DS L -1.00 DS. Add +2.00 OU}.
 */
final class Additions {

  private static final Set<String> LENS = Set.of("refraction", "x", "ds", "retinoscopy", "plano");

  private Additions() {}

  static List<Token> joined(List<Token> note) {
    List<Token> out = new ArrayList<>();
    int clause = 0;
    for (int i = 0; i < note.size(); i++) {
      Token token = note.get(i);
      boolean end = token.kind() == Token.Kind.BREAK;
      boolean joins = end && isAddition(note, i + 1) && isLens(out.subList(clause, out.size()));
      out.add(joins ? comma(token) : token);
      clause = end && !joins ? out.size() : clause;
    }
    return List.copyOf(out);
  }

  private static boolean isAddition(List<Token> note, int at) {
    return at + 1 < note.size() && note.get(at).is("add") && !note.get(at + 1).is(":");
  }

  private static boolean isLens(List<Token> clause) {
    return clause.stream().anyMatch(token -> LENS.contains(token.text()));
  }

  private static Token comma(Token stop) {
    return new Token(
        Token.Kind.MARK, ",", stop.seen(), stop.start(), stop.end(), stop.line(), stop.column());
  }
}
