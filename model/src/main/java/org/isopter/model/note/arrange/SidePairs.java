package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Site;

/**
 * Puts each of two values behind its eye where both eyes are named with a stroke: {@code IOP R/L
 * 14/16}, {@code IOP 14/16 (R/L)} and {@code IOP 14/16 R/L}. A stroke may also be that of a
 * fraction: only pressures and other sizes, and numbers with decimals, are two values.
 */
public final class SidePairs {

  private final List<Token> note;
  private final List<Token> out = new ArrayList<>();
  private boolean ofSizes;

  private SidePairs(List<Token> note) {
    this.note = note;
  }

  /** Returns the note with each value of such a pair behind its side. */
  public static List<Token> parted(List<Token> note) {
    SidePairs pairs = new SidePairs(note);
    int at = 0;
    while (at < note.size()) {
      at += pairs.step(at);
    }
    return List.copyOf(pairs.out);
  }

  private int step(int at) {
    Token token = note.get(at);
    ofSizes = token.kind() != Token.Kind.BREAK && (ofSizes || isSize(token));
    int values = isMark(at + 3, ":") || isMark(at + 3, "=") ? at + 4 : at + 3;
    if (areSides(at) && areValues(values)) {
      put(at, values, values + 2);
      return values + 3 - at;
    }
    boolean unit = isMark(at + 3, "mmhg");
    int bracket = unit ? at + 4 : at + 3;
    if (areValues(at)
        && isMark(bracket, "(")
        && areSides(bracket + 1)
        && isMark(bracket + 4, ")")) {
      put(bracket + 1, at, bracket + 4);
      return bracket + 5 - at;
    }
    if (areValues(at) && areSides(bracket) && endsAt(bracket + 3)) {
      put(bracket, at, bracket + 2);
      return bracket + 3 - at;
    }
    out.add(token);
    return 1;
  }

  /** Says whether nothing more of the item stands at a place. */
  private boolean endsAt(int at) {
    return at == note.size() || note.get(at).kind() == Token.Kind.BREAK || note.get(at).is(",");
  }

  /** Puts each value behind its side; the last reaches to the end of all of it. */
  private void put(int sides, int values, int last) {
    out.add(note.get(sides));
    out.add(note.get(values));
    out.add(note.get(sides + 2));
    out.add(note.get(values + 2).until(note.get(last)));
  }

  private boolean areSides(int at) {
    return isMark(at + 1, "/")
        && at + 2 < note.size()
        && side(at).isPresent()
        && side(at + 2).isPresent()
        && !side(at).equals(side(at + 2));
  }

  private Optional<Site> side(int at) {
    return Common.side(note.get(at)).filter(Site.EACH_EYE::contains);
  }

  private boolean areValues(int at) {
    boolean pair = isNumber(at) && isMark(at + 1, "/") && isNumber(at + 2) && !isMark(at + 3, "/");
    boolean behindStroke = at > 0 && isMark(at - 1, "/");
    return pair && !behindStroke && (ofSizes || (isDecimal(at) && isDecimal(at + 2)));
  }

  private static boolean isSize(Token token) {
    return WordFiles.is(WordRole.SIZE, token.text());
  }

  private boolean isNumber(int at) {
    return at < note.size() && note.get(at).isNumber();
  }

  private boolean isDecimal(int at) {
    return note.get(at).text().contains(".");
  }

  private boolean isMark(int at, String mark) {
    return at < note.size() && note.get(at).is(mark);
  }
}
