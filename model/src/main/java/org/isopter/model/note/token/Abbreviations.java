package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Tells the full stop of an abbreviation from that of a sentence.
 *
 * <p>Words such as {@code poss.}, {@code susp.} or {@code V.a.} may deny or doubt what follows, so
 * that nothing after them stands alone: {@code poss. RAPD L} is no sentence about a left defect.
 */
public final class Abbreviations {

  /** Abbreviations are short: susp, equiv. */
  private static final int LONGEST = 5;

  /** A number with one of these starts an item of its own: ptosis L. 5 mm pupil R. */
  private static final Set<String> OTHER_UNITS = Set.of("mm", "log", "pd", "d");

  private final List<Token> tokens;
  private final Predicate<String> known;
  private final Predicate<Token> side;

  private Abbreviations(List<Token> tokens, Predicate<String> known, Predicate<Token> side) {
    this.tokens = tokens;
    this.known = known;
    this.side = side;
  }

  /**
   * Returns the tokens without the full stops behind abbreviations.
   *
   * @param known says which words may be a sentence of their own
   * @param side says which name an eye: a number behind the stop may belong to it, {@code R. 6/6}
   */
  public static List<Token> joined(
      List<Token> tokens, Predicate<String> known, Predicate<Token> side) {
    return new Abbreviations(tokens, known, side).joined();
  }

  private List<Token> joined() {
    List<Token> joined = new ArrayList<>();
    boolean opened = false;
    boolean sideFirst = false;
    for (int at = 0; at < tokens.size(); at++) {
      boolean side =
          isFullStop(at)
              && ((isSide(at) && (sideFirst || !isNumber(at - 2))) || opens(at, sideFirst));
      boolean stop = side || (isFullStop(at) && isOfWord(at, opened));
      if (!stop) {
        joined.add(tokens.get(at));
      }
      opened = !side && (stop || (opened && isShort(at)));
      sideFirst = side || (sideFirst && (stop || tokens.get(at).kind() != Token.Kind.BREAK));
    }
    return List.copyOf(joined);
  }

  /** Says whether a full stop stands here, and something behind it in the line. */
  private boolean isFullStop(int at) {
    return at > 0
        && tokens.get(at).kind() == Token.Kind.BREAK
        && tokens.get(at).is(".")
        && at + 1 < tokens.size()
        && (tokens.get(at + 1).kind() != Token.Kind.BREAK || tokens.get(at + 1).is("."))
        && tokens.get(at + 1).line() == tokens.get(at).line();
  }

  /** Says whether the stop belongs to the word before it, or to one behind an abbreviation. */
  private boolean isOfWord(int stop, boolean opened) {
    return isAbbreviation(stop - 1) || (opened && isShort(stop - 1)) || repeats(stop, opened);
  }

  /** Says whether a word that says nothing has gone from before the stop: V. a. */
  private boolean repeats(int stop, boolean opened) {
    return isPoint(stop - 1) || (opened && tokens.get(stop - 1).kind() == Token.Kind.BREAK);
  }

  /** Says whether an eye before the stop waits for the number behind it: IOP R. 14 L. 16. */
  private boolean isSide(int stop) {
    return side.test(tokens.get(stop - 1))
        && isNumber(stop + 1)
        && (stop + 2 == tokens.size() || !OTHER_UNITS.contains(tokens.get(stop + 2).text()));
  }

  /**
   * Says whether an eye before the stop opens a clause: re. Papille blass. Behind a comma it may
   * close one, unless the sentence opened with an eye: re. Papille blass, li. Papille rosig.
   */
  private boolean opens(int stop, boolean sideFirst) {
    boolean first = stop == 1 || tokens.get(stop - 2).kind() == Token.Kind.BREAK;
    return side.test(tokens.get(stop - 1))
        && tokens.get(stop + 1).kind() == Token.Kind.WORD
        && (first || (sideFirst && tokens.get(stop - 2).is(",")));
  }

  private boolean isNumber(int at) {
    return at >= 0 && tokens.get(at).isNumber();
  }

  private boolean isPoint(int at) {
    return tokens.get(at).kind() == Token.Kind.MARK && tokens.get(at).is(".");
  }

  private boolean isAbbreviation(int at) {
    boolean opens = startsClause(at) && !known.test(tokens.get(at).text());
    return isShort(at) && (isDotted(at) || opens);
  }

  /** Says whether a short word stands here as it was written. */
  private boolean isShort(int at) {
    Token token = tokens.get(at);
    return token.kind() == Token.Kind.WORD
        && token.text().length() <= LONGEST
        && token.seen().equalsIgnoreCase(token.text());
  }

  /** Says whether the word is the end of one with a point inside: s.p, v.a. */
  private boolean isDotted(int at) {
    return at > 0 && isPoint(at - 1);
  }

  private boolean startsClause(int at) {
    return at == 0 || tokens.get(at - 1).kind() == Token.Kind.BREAK || tokens.get(at - 1).is(",");
  }
}
