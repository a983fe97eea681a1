package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;

/**
 * The tokens between two line ends, semicolons or full stops.
 *
 * @param tokens at least one
 * @param newLine whether it is the first of its line
 * @param afterGap whether an empty line stands before it
 * @param newSentence whether a full stop or a line end stands before it
 */
public record Clause(List<Token> tokens, boolean newLine, boolean afterGap, boolean newSentence) {

  /** Returns the clauses of a note, in its order; marks that end them are left out. */
  public static List<Clause> of(List<Token> note) {
    List<Clause> clauses = new ArrayList<>();
    List<Token> open = new ArrayList<>();
    int lastLine = 0;
    boolean stop = true;
    for (Token token : note) {
      if (token.kind() != Token.Kind.BREAK) {
        open.add(token);
        continue;
      }
      if (!open.isEmpty()) {
        clauses.add(of(open, lastLine, stop));
        lastLine = token.line();
        open = new ArrayList<>();
        stop = false;
      }
      stop = stop || !token.is(";");
    }
    if (!open.isEmpty()) {
      clauses.add(of(open, lastLine, stop));
    }
    return clauses;
  }

  private static Clause of(List<Token> open, int lastLine, boolean stop) {
    int line = open.get(0).line();
    return new Clause(List.copyOf(open), line > lastLine, line > lastLine + 1, stop);
  }

  /** Returns the line that it starts on, from 1. */
  public int line() {
    return tokens.get(0).line();
  }
}
