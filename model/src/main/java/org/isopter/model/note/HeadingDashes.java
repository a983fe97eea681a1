package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * Takes a dash between spaces behind a heading for a colon: {@code EOM - full}. Behind a sign it
 * may say that it is absent, and before a number that it is less than nought: there it stays. Where
 * a side follows the sign, as in {@code SVP - R}, nobody can know which, and it is not read.
 */
final class HeadingDashes {

  /** No word of any item. */
  private static final String UNCLEAR = "\u2013";

  private HeadingDashes() {}

  static List<Token> colons(List<Token> note) {
    List<Token> out = new ArrayList<>(note);
    for (int i = 1; i + 1 < note.size(); i++) {
      if (isDash(note, i) && isBetweenEyeAndHeading(note, i)) {
        out.set(i, note.get(i).saying(":"));
      } else if (isDash(note, i)
          && isHeading(note, i - 1)
          && isClear(note.get(i - 1), note.get(i + 1))) {
        out.set(i, note.get(i).saying(":"));
      } else if (isDash(note, i) && isBetweenWordAndSide(note, i)) {
        out.set(i, note.get(i).saying(UNCLEAR));
      }
    }
    return List.copyOf(out);
  }

  private static boolean isDash(List<Token> note, int at) {
    Token dash = note.get(at);
    return (dash.is("-") || dash.is("\u2013"))
        && note.get(at - 1).end() < dash.start()
        && dash.end() < note.get(at + 1).start();
  }

  private static boolean isBetweenWordAndSide(List<Token> note, int at) {
    return note.get(at - 1).kind() == Token.Kind.WORD
        && Common.side(note.get(at - 1)).isEmpty()
        && Common.side(note.get(at + 1)).isPresent();
  }

  /** Says whether a dash stands behind the eye that starts a clause: R - VA 6/9. */
  private static boolean isBetweenEyeAndHeading(List<Token> note, int at) {
    boolean starts = at == 1 || note.get(at - 2).kind() == Token.Kind.BREAK;
    return starts
        && Common.side(note.get(at - 1)).isPresent()
        && WordFiles.is(WordRole.HEADING, note.get(at + 1).text());
  }

  private static boolean isHeading(List<Token> note, int at) {
    int start = note.get(at).is("plates") && at > 0 && note.get(at - 1).is("colour") ? at - 1 : at;
    boolean starts = start == 0 || note.get(start - 1).kind() == Token.Kind.BREAK;
    return starts && WordFiles.is(WordRole.HEADING, note.get(at).text());
  }

  private static boolean isClear(Token heading, Token next) {
    return next.kind() == Token.Kind.WORD
        || (next.kind() == Token.Kind.NUMBER && WordFiles.is(WordRole.SIZE, heading.text()));
  }
}
