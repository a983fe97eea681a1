package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.habit.ListWords;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * Says the "no" of a list again for each of its members: {@code no ptosis, proptosis or lid lag} is
 * {@code no ptosis, no proptosis, no lid lag}. Only an "or" makes that clear, or a stroke ({@code
 * no ptosis/diplopia}); a list without one stays as it is.
 */
final class OrLists {

  private static final Set<String> MARKS = Set.of(":", "/", "+", "=");

  /** A longer member is no name of a sign. */
  private static final int LONGEST = 5;

  /** A stroke between shorter words is part of an abbreviation: n/a, c/d. */
  private static final int SHORTEST = 4;

  private OrLists() {}

  static List<Token> spelledOut(List<Token> note) {
    List<Token> out = new ArrayList<>();
    for (int i = 0; i < note.size(); i++) {
      boolean stroke = isStroke(note, i);
      boolean or = stroke || ListWords.isOr(note.get(i));
      int no = or ? denial(out) : -1;
      boolean list = no >= 0 && (stroke || ListWords.joins(note.get(i), out.get(no)));
      if (list && isMember(note, i + 1)) {
        spellOut(out, no, note.get(i));
        i += repeats(out, note, i + 1);
      } else if (list && isOfOneEye(note, i + 1)) {
        out.add(note.get(i).as(Token.Kind.WORD, "or"));
      } else {
        out.add(note.get(i));
      }
    }
    return List.copyOf(out);
  }

  /** Says whether words alone follow, up to a mark or the end of the clause. */
  private static boolean isMember(List<Token> note, int from) {
    int at = behindWords(note, from);
    boolean ends =
        at == note.size() || note.get(at).kind() == Token.Kind.BREAK || note.get(at).is(",");
    return at > from
        && at - from <= LONGEST
        && (ends || isStroke(note, at) || ListWords.isOr(note.get(at)));
  }

  /** Says whether an eye is named behind the last member: it may hold for all of the list. */
  private static boolean isOfOneEye(List<Token> note, int from) {
    int at = behindWords(note, from);
    return at > from && at < note.size() && ListWords.isOneEye(note.get(at));
  }

  private static int behindWords(List<Token> note, int from) {
    int at = from;
    while (at < note.size() && isName(note.get(at)) && !isStop(note.get(at))) {
      at++;
    }
    return at;
  }

  /** Says whether a stroke stands between two words that are no abbreviations: ptosis/diplopia. */
  private static boolean isStroke(List<Token> note, int at) {
    return note.get(at).is("/")
        && at > 0
        && at + 1 < note.size()
        && isLong(note.get(at - 1))
        && isLong(note.get(at + 1));
  }

  private static boolean isLong(Token token) {
    return isName(token) && token.text().length() >= SHORTEST;
  }

  /** Returns where the "no" of the list stands, or -1 where anything but names stands between. */
  private static int denial(List<Token> before) {
    for (int i = before.size() - 1; i >= 0; i--) {
      Token token = before.get(i);
      if (ListWords.isDenial(token)) {
        return i == before.size() - 1 ? -1 : i;
      }
      boolean name = token.is(",") || (isWord(token) && !isStop(token));
      if (!name) {
        return -1;
      }
    }
    return -1;
  }

  private static void spellOut(List<Token> out, int no, Token or) {
    List<Token> list = new ArrayList<>(out.subList(no, out.size()));
    out.subList(no, out.size()).clear();
    for (int i = 0; i < list.size(); i++) {
      out.add(list.get(i));
      boolean member = i + 1 < list.size() && !ListWords.isDenial(list.get(i + 1));
      if (list.get(i).is(",") && member) {
        addNo(list, out);
        i += repeats(out, list, i + 1);
      }
    }
    if (!out.get(out.size() - 1).is(",")) {
      out.add(or.as(Token.Kind.MARK, ","));
    }
    addNo(list, out);
  }

  /**
   * Adds the words of the denial, of which French has two: pas de. They keep their place, so that a
   * member that is not read is shown with its "no".
   */
  private static void addNo(List<Token> list, List<Token> out) {
    out.addAll(list.subList(0, ListWords.denial(list)));
  }

  /** Returns 1 where a member has the second word of its denial already: ni de nystagmus. */
  private static int repeats(List<Token> out, List<Token> rest, int at) {
    boolean two = at < rest.size() && ListWords.isSecond(out.get(out.size() - 1));
    return two && rest.get(at).is(out.get(out.size() - 1).text()) ? 1 : 0;
  }

  private static boolean isStop(Token token) {
    return MARKS.contains(token.text()) || ListWords.isAnd(token);
  }

  private static boolean isWord(Token token) {
    boolean oneEye = Common.side(token).filter(Site.EACH_EYE::contains).isPresent();
    return token.kind() == Token.Kind.WORD && !oneEye;
  }

  /**
   * Says whether a word may be of the name of a sign, which no word for an eye is in any language.
   */
  private static boolean isName(Token token) {
    return token.kind() == Token.Kind.WORD && !ListWords.isOneEye(token);
  }
}
