package org.isopter.model.note.token;

import java.util.List;

/**
 * A word, a number or a mark of a note, and where it stands.
 *
 * @param kind what it is
 * @param text the word in lower case, the digits, or the mark
 * @param seen what was written
 * @param start where it starts in the note
 * @param end where it ends in the note, exclusive
 * @param line its line, from 1
 * @param column its place in the line, from 1
 */
public record Token(Kind kind, String text, String seen, int start, int end, int line, int column) {

  public enum Kind {
    WORD,
    NUMBER,
    MARK,
    /** Ends a clause: a line end, a semicolon, a full stop. */
    BREAK
  }

  /** Returns tokens as they were written, a space between those that do not touch: 3+. */
  public static String seen(List<Token> tokens) {
    StringBuilder seen = new StringBuilder();
    int start = -1;
    int end = tokens.get(0).start();
    for (Token token : tokens) {
      // Tokens that one phrase stands for are all at its place.
      if (token.start() != start || token.end() != end) {
        seen.append(token.start() == end ? "" : " ").append(token.seen());
      }
      start = token.start();
      end = token.end();
    }
    return seen.toString();
  }

  /** Says whether it has this text, whatever the case of its letters. */
  public boolean is(String other) {
    return text.equals(other);
  }

  /** Says whether it is a number. */
  public boolean isNumber() {
    return kind == Kind.NUMBER;
  }

  /** Returns this as a word of no item, so that what it stands in is not read. */
  public Token unclear() {
    return saying("\u2013");
  }

  /** Returns this as another kind of piece. */
  public Token as(Kind other) {
    return as(other, text);
  }

  /** Returns this as if another text of the same kind had been written. */
  public Token saying(String other) {
    return as(kind, other);
  }

  /** Returns this as another kind of piece with another text. */
  public Token as(Kind other, String said) {
    return new Token(other, said, seen, start, end, line, column);
  }

  /** Returns this as if it stood between two letters of the note, so that places only go up. */
  public Token at(int place) {
    return new Token(kind, text, seen, place, place, line, column);
  }

  /** Returns this as if it stood just before another one, where nobody wrote it. */
  public Token before(Token next) {
    int place = next.start();
    return new Token(kind, text, seen, place, place, next.line(), next.column());
  }

  /** Returns a word that nobody wrote, just before a token. */
  public static Token unwritten(String word, Token next) {
    return new Token(Kind.WORD, word, "", 0, 0, 0, 0).before(next);
  }

  /** Returns this as if it reached to the end of a later one, which is left out. */
  public Token until(Token later) {
    return endingAt(later.end());
  }

  /** Returns this as if it reached to another place of the note. */
  Token endingAt(int other) {
    return new Token(kind, text, seen, start, other, line, column);
  }
}
