package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.token.Token;

/**
 * Puts the words for a field that both eyes have lost in one order: what was examined goes without
 * saying, and how stands behind: {@code CVF: R homonymous hemianopia}.
 */
final class HalfFieldOrder {

  private static final Set<String> FIELD = Set.of("vf", "cvf", "field", "fields", ":");
  private static final Set<String> LOST = Set.of("homonymous", "bitemporal");
  private static final Set<String> BETWEEN =
      Set.of("r", "l", "right", "left", "superior", "inferior");

  private HalfFieldOrder() {}

  static List<Token> of(List<Token> note) {
    List<Token> out = new ArrayList<>();
    int at = 0;
    while (at < note.size()) {
      int lost = startsItem(note, at) ? lost(note, at) : -1;
      if (lost > at) {
        int end = end(note, lost);
        List<Token> kept =
            note.subList(at, end).stream().filter(token -> !isOfField(token)).toList();
        out.add(from(note.get(at), kept.get(0)));
        out.addAll(kept.subList(1, kept.size()));
        Token last = note.get(end - 1);
        note.subList(at, lost).stream()
            .filter(token -> token.is("confrontation"))
            .limit(1)
            .forEach(token -> method(last, out));
        at = end;
      } else {
        out.add(note.get(at++));
      }
    }
    return List.copyOf(out);
  }

  private static boolean startsItem(List<Token> note, int at) {
    boolean first =
        at == 0 || note.get(at - 1).kind() == Token.Kind.BREAK || note.get(at - 1).is(",");
    boolean field = FIELD.contains(note.get(at).text()) || note.get(at).is("confrontation");
    return first && field && !note.get(at).is(":");
  }

  /** Returns where the lost half is named behind the field; -1 where something else is said. */
  private static int lost(List<Token> note, int at) {
    for (int i = at + 1; i < note.size(); i++) {
      String text = note.get(i).text();
      if (LOST.contains(text)) {
        return i;
      }
      if (!BETWEEN.contains(text) && !isOfField(note.get(i)) && !text.equals("to")) {
        return -1;
      }
    }
    return -1;
  }

  private static int end(List<Token> note, int lost) {
    int end = lost;
    while (end < note.size()
        && !note.get(end).is(",")
        && note.get(end).kind() != Token.Kind.BREAK) {
      end++;
    }
    return end;
  }

  private static boolean isOfField(Token token) {
    return FIELD.contains(token.text()) || token.is("confrontation") || token.is("to");
  }

  /** Returns a word as if it started where the item does, so that the item is kept whole. */
  private static Token from(Token first, Token word) {
    return new Token(
        word.kind(),
        word.text(),
        word.seen(),
        first.start(),
        word.end(),
        first.line(),
        first.column());
  }

  private static void method(Token place, List<Token> out) {
    out.add(place.as(Token.Kind.WORD, "to"));
    out.add(place.as(Token.Kind.WORD, "confrontation"));
  }
}
