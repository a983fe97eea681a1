package org.isopter.model.note;

import java.util.List;
import org.isopter.model.note.token.Token;

/**
 * Some neighbouring tokens of a note.
 *
 * @param tokens the tokens; at least one
 */
record Piece(List<Token> tokens) {

  Token first() {
    return tokens.get(0);
  }

  /** Returns the words of the note that it stands for. */
  String of(String note) {
    return note.substring(first().start(), tokens.get(tokens.size() - 1).end());
  }
}
