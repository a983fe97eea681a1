package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * The words for eyes, each as one token: {@code right eye}, brackets that hold nothing else, {@code
 * (R)}, and a plus that joins the two, {@code R+L}. A word behind such a plus that says a sign is
 * missing may be of the second eye alone: then it is not read.
 */
public final class SideMarks {

  private static final String EACH = "each";

  private static final Set<String> MISSING = Set.of("absent", "none", "negative", "normal");

  private SideMarks() {}

  /** Returns the note without such marks. */
  public static List<Token> plain(List<Token> note) {
    return withoutBrackets(joined(note));
  }

  private static List<Token> withoutBrackets(List<Token> note) {
    List<Token> out = new ArrayList<>();
    int at = 0;
    while (at < note.size()) {
      if (isBracketed(note, at)) {
        Token side = note.get(at + 1);
        out.add(reaching(side, note.get(at), note.get(at + 2), side.seen()));
        at += 3;
      } else {
        out.add(note.get(at));
        at++;
      }
    }
    return List.copyOf(out);
  }

  private static List<Token> joined(List<Token> note) {
    List<Token> out = new ArrayList<>();
    int at = 0;
    while (at < note.size()) {
      if (isNamedEye(note, at)) {
        Token eye = note.get(at);
        out.add(reaching(eye, note.get(at), note.get(at + 1), eye.seen() + " eye"));
        at += 2;
      } else if (isSum(note, at)) {
        addSum(note, at, out);
        at += 3;
      } else {
        out.add(note.get(at));
        at++;
      }
    }
    return List.copyOf(out);
  }

  /** Says whether two words name one eye: right eye. */
  private static boolean isNamedEye(List<Token> note, int at) {
    return at + 1 < note.size() && note.get(at + 1).is("eye") && eye(note.get(at)).isPresent();
  }

  private static boolean isBracketed(List<Token> note, int at) {
    return at + 2 < note.size()
        && note.get(at).is("(")
        && note.get(at + 2).is(")")
        && Common.side(note.get(at + 1)).isPresent();
  }

  private static boolean isSum(List<Token> note, int at) {
    return at + 2 < note.size()
        && note.get(at + 1).is("+")
        && isClose(note, at)
        && isClose(note, at + 1)
        && eye(note.get(at)).isPresent()
        && eye(note.get(at + 2)).isPresent()
        && !eye(note.get(at)).equals(eye(note.get(at + 2)))
        && !isSigned(note, at + 3);
  }

  private static boolean isClose(List<Token> note, int at) {
    return note.get(at).end() == note.get(at + 1).start();
  }

  /** Says whether a sign stands close behind the second eye: R+L-. */
  private static boolean isSigned(List<Token> note, int at) {
    boolean sign = at < note.size() && (note.get(at).is("+") || note.get(at).is("-"));
    return sign && isClose(note, at - 1);
  }

  private static void addSum(List<Token> note, int at, List<Token> out) {
    boolean missing = at + 3 < note.size() && mayBeOfOne(note.get(at + 3));
    if (missing) {
      out.add(note.get(at));
      out.add(note.get(at + 1).unclear());
      out.add(note.get(at + 2));
      return;
    }
    Token each = note.get(at).saying(EACH);
    out.add(reaching(each, note.get(at), note.get(at + 2), each.seen()));
  }

  private static boolean mayBeOfOne(Token next) {
    return Denial.isNo(next) || MISSING.contains(next.text()) || next.is("-");
  }

  private static Optional<Site> eye(Token token) {
    return Common.side(token).filter(Site.EACH_EYE::contains);
  }

  private static Token reaching(Token side, Token first, Token last, String seen) {
    return new Token(
        side.kind(), side.text(), seen, first.start(), last.end(), first.line(), first.column());
  }
}
