package org.isopter.model.note.grammar;

import java.util.List;
import java.util.stream.IntStream;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;

/**
 * What stands between the values of an item and says nothing itself.
 *
 * @param tokens the item
 * @param cursor the place in it, which moves past what is taken
 */
record Joints(List<Token> tokens, Cursor cursor) {

  /**
   * Takes a dash with a space on either side between a number and a side. Between a word and a side
   * nobody knows what it says, and it is no dash by then.
   */
  boolean takeDash() {
    int at = cursor.place();
    boolean dash = isSpacedDash() && namesSide(at + 1);
    cursor.back(dash ? at + 1 : at);
    return dash;
  }

  /** Says whether a dash with a space on either side stands here. */
  boolean isSpacedDash() {
    int at = cursor.place();
    return cursor.sees("-")
        && at > 0
        && at + 1 < tokens.size()
        && tokens.get(at - 1).end() < tokens.get(at).start()
        && tokens.get(at).end() < tokens.get(at + 1).start();
  }

  /** Takes a stroke, or a word that joins. */
  boolean takeJoint() {
    // A side behind a "with" leaves out with what: VA with R 6/9.
    boolean open = cursor.sees("with") && namesSide(cursor.place() + 1);
    boolean joint = !open && (cursor.sees("/") || Common.isConnector(cursor.token()));
    cursor.back(cursor.place() + (joint ? 1 : 0));
    return joint;
  }

  /** Says whether an eye is named at a place. */
  boolean namesSide(int at) {
    return new Cursor(tokens, at).attempt(Common.SIDES).isPresent();
  }

  /** Says whether an eye is named anywhere behind a place. */
  boolean namesSideBehind(int at) {
    return IntStream.range(at, tokens.size()).anyMatch(this::namesSide);
  }
}
