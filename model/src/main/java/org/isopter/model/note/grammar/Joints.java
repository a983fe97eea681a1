package org.isopter.model.note.grammar;

import java.util.List;
import java.util.Set;
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

  /** Words for how something is, which no dash before them can deny. */
  private static final Set<String> STATES =
      Set.of("normal", "full", "clear", "pink", "sharp", "flat", "healthy", "brisk", "sluggish");

  /**
   * Takes a dash with a space on either side between a number and a side, or between a side and how
   * something is. Between a word and a side nobody knows what it says, and it is no dash by then.
   *
   * @param behindSide whether a side stands just before
   */
  boolean takeDash(boolean behindSide) {
    int at = cursor.place();
    boolean spaced =
        cursor.sees("-")
            && at > 0
            && at + 1 < tokens.size()
            && tokens.get(at - 1).end() < tokens.get(at).start()
            && tokens.get(at).end() < tokens.get(at + 1).start();
    boolean state = behindSide && spaced && STATES.contains(tokens.get(at + 1).text());
    boolean dash = spaced && (namesSide(at + 1) || state);
    cursor.back(dash ? at + 1 : at);
    return dash;
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
