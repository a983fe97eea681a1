package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

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

  /** Returns a note with each of its clauses changed; the marks that end them stay as they are. */
  public static List<Token> mapped(List<Token> note, UnaryOperator<List<Token>> change) {
    List<Token> out = new ArrayList<>();
    int start = 0;
    for (int at = 0; at <= note.size(); at++) {
      boolean mark = at < note.size() && note.get(at).kind() == Token.Kind.BREAK;
      if (mark || at == note.size()) {
        out.addAll(change.apply(note.subList(start, at)));
        out.addAll(note.subList(at, mark ? at + 1 : at));
        start = at + 1;
      }
    }
    return List.copyOf(out);
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
