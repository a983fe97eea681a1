package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;

/**
 * The tokens between two line ends, semicolons or full stops.
 *
 * @param tokens at least one
 * @param newLine whether it is the first of its line
 * @param afterGap whether an empty line stands before it
 */
public record Clause(List<Token> tokens, boolean newLine, boolean afterGap) {

  public static List<Clause> of(List<Token> note) {
    List<Clause> clauses = new ArrayList<>();
    List<Token> open = new ArrayList<>();
    int lastLine = 0;
    for (Token token : note) {
      if (token.kind() != Token.Kind.BREAK) {
        open.add(token);
      } else if (!open.isEmpty()) {
        clauses.add(of(open, lastLine));
        lastLine = token.line();
        open = new ArrayList<>();
      }
    }
    if (!open.isEmpty()) {
      clauses.add(of(open, lastLine));
    }
    return clauses;
  }

  private static Clause of(List<Token> open, int lastLine) {
    int line = open.get(0).line();
    return new Clause(List.copyOf(open), line > lastLine, line > lastLine + 1);
  }

  public int line() {
    return tokens.get(0).line();
  }
}
