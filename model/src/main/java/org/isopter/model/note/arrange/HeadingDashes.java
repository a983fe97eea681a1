package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * Takes a dash between spaces behind a heading for a colon: {@code EOM - full}. Behind a sign it
 * may say that it is absent, and before a number that it is less than nought: there it stays. Where
 * a side follows the sign, as in {@code SVP - R}, nobody can know which, and it is not read.
 */
public final class HeadingDashes {

  /** Words that tell whether a sign is there. */
  private static final String[] ANSWERS = {"present", "absent", "none", "nil", "no"};

  private HeadingDashes() {}

  /** Returns the note with a colon for each dash that can only be one. */
  public static List<Token> colons(List<Token> note, Headings headings) {
    List<Token> out = new ArrayList<>(note);
    for (int i = 1; i + 1 < note.size(); i++) {
      if (isDash(note, i) && isBetweenEyeAndHeading(note, i, headings)) {
        out.set(i, note.get(i).saying(":"));
      } else if (isDash(note, i) && isClear(note, i, heading(note, i, headings))) {
        out.set(i, note.get(i).saying(":"));
      } else if (isDash(note, i) && isBetweenWordAndSide(note, i)) {
        out.set(i, note.get(i).unclear());
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
  private static boolean isBetweenEyeAndHeading(List<Token> note, int at, Headings headings) {
    boolean starts = at == 1 || note.get(at - 2).kind() == Token.Kind.BREAK;
    return starts
        && Common.side(note.get(at - 1)).isPresent()
        && headings
            .certain(note, at + 1)
            .filter(found -> found.at() == at + 1 && !found.heading().kept())
            .filter(found -> !Denial.isOfSign(found.grammar()))
            .isPresent();
  }

  /** Returns the grammar of a heading that stands before a dash in its clause with no value. */
  private static Optional<Grammar> heading(List<Token> note, int dash, Headings headings) {
    int start = dash;
    while (start > 0 && note.get(start - 1).kind() != Token.Kind.BREAK) {
      start--;
    }
    List<Token> words = note.subList(start, dash);
    return headings
        .certain(words, 0)
        .filter(found -> !found.heading().kept())
        .filter(found -> found.grammar().isUnder(words.subList(found.end(), words.size())))
        .map(Headings.Found::grammar);
  }

  /**
   * Says whether a dash cannot say "no" or "less than nought": behind a sign it stands before words
   * that tell whether the sign is there, and no more; behind others before a word, a side, or a
   * size.
   */
  private static boolean isClear(List<Token> note, int dash, Optional<Grammar> heading) {
    if (heading.isEmpty()) {
      return false;
    }
    if (!heading.get().sides().namesAnEye() || Denial.isOfSign(heading.get())) {
      return isAnswer(note, dash + 1);
    }
    Token next = note.get(dash + 1);
    return next.kind() == Token.Kind.WORD
        || (next.isNumber() && WordFiles.is(WordRole.SIZE, note.get(dash - 1).text()));
  }

  private static boolean isAnswer(List<Token> note, int at) {
    Cursor cursor = new Cursor(note, at);
    boolean answer = cursor.attempt(Common.ABSENCES).isPresent() || cursor.takeAny(ANSWERS);
    boolean ends = cursor.atEnd() || cursor.sees(",") || cursor.token().kind() == Token.Kind.BREAK;
    return answer && ends;
  }
}
