package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Site;

/**
 * Puts apart what is said of the pinhole behind the acuities of two eyes, where it is no acuity:
 * {@code VA R 6/9 L 6/12, no improvement with pinhole}. It may be of one eye or of both, but it
 * changes neither acuity.
 */
public final class PinholeTail {

  private final List<Token> note;

  private PinholeTail(List<Token> note) {
    this.note = note;
  }

  /** Returns the note with an end of the clause before each such pinhole. */
  public static List<Token> apart(List<Token> note) {
    PinholeTail tail = new PinholeTail(note);
    List<Token> out = new ArrayList<>();
    int clause = 0;
    int at = 0;
    while (at < note.size()) {
      if (note.get(at).kind() == Token.Kind.BREAK) {
        clause = at + 1;
      }
      boolean comma = note.get(at).is(",");
      int pinhole = comma ? at + 1 : at;
      int end = tail.end(pinhole);
      if (end > pinhole && tail.isBehindTwoEyes(clause, at)) {
        out.add(note.get(at).as(Token.Kind.BREAK, ";"));
        tail.put(pinhole, end, comma, out);
        at = end;
      } else {
        out.add(note.get(at));
        at++;
      }
    }
    return List.copyOf(out);
  }

  /** Puts the eyes before what is said; without a comma it may be of the last eye alone. */
  private void put(int pinhole, int end, boolean comma, List<Token> out) {
    List<Token> said = new ArrayList<>(note.subList(pinhole + 1, end));
    Token last = said.get(said.size() - 1);
    boolean eyes = Common.side(last).isPresent();
    if (eyes) {
      said.add(0, said.remove(said.size() - 1));
    }
    out.add(note.get(pinhole));
    out.addAll(said);
    if (!eyes && !comma) {
      out.add(last.unclear());
    }
  }

  /** Says whether two eyes, and no pinhole, are named in a clause before a place. */
  private boolean isBehindTwoEyes(int clause, int at) {
    List<Token> before = note.subList(clause, Math.max(clause, at));
    return before.stream().flatMap(token -> Common.side(token).stream()).distinct().count() == 2
        && before.stream().noneMatch(PinholeTail::isPinhole);
  }

  private static boolean isPinhole(Token token) {
    return WordFiles.is(WordRole.PINHOLE, token.text());
  }

  /** Returns where the clause ends that says of a pinhole only that it gave nothing. */
  private int end(int at) {
    if (at >= note.size() || !isPinhole(note.get(at))) {
      return at;
    }
    Cursor cursor = new Cursor(note, at + 1);
    boolean unimproved = cursor.take("ni");
    boolean nothing = unimproved || cursor.attempt(Common.ABSENCES).isPresent();
    boolean both =
        !cursor.atEnd() && Common.side(cursor.token()).filter(Site.BOTH::equals).isPresent();
    int end = cursor.place() + (both ? 1 : 0);
    boolean ends = end == note.size() || note.get(end).kind() == Token.Kind.BREAK;
    // Without a comma a value is of the eye before it.
    boolean apart = !unimproved || both || (at > 0 && note.get(at - 1).is(","));
    return nothing && ends && apart ? end : at;
  }
}
