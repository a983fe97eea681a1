package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;

/**
 * The ways in which a note may come to harm, each of which leaves no other legal meaning.
 *
 * <p>The same note and turn always give the same harm: the turn chooses the word.
 */
enum Mutator {
  /** Two neighbouring letters change places. */
  SWAPPED_LETTERS(
      token -> token.kind() == Token.Kind.WORD && token.seen().length() > 2,
      (word, turn) -> swapped(word, 1 + turn % (word.length() - 2))),
  /** A side is named by a word that is none. */
  UNKNOWN_SIDE(Mutator::isSide, (word, turn) -> "M"),
  /** A number is followed by a unit that nothing at the eye is measured in. */
  FOREIGN_UNIT(
      token -> token.kind() == Token.Kind.NUMBER,
      (number, turn) -> number + List.of("kPa", " kg", "\u00B0C").get(turn % 3)),
  /** A number is greater than anything at the eye. */
  IMPOSSIBLE_NUMBER(token -> token.kind() == Token.Kind.NUMBER, (number, turn) -> "99999"),
  /** A number is doubted or denied. */
  DOUBT(
      token -> token.kind() == Token.Kind.NUMBER,
      (number, turn) ->
          List.of("? ", "not ", "no ", "nearly ", "without ", "denies ").get(turn % 6) + number);

  private final Predicate<Token> victim;
  private final BiFunction<String, Integer, String> harm;

  Mutator(Predicate<Token> victim, BiFunction<String, Integer, String> harm) {
    this.victim = victim;
    this.harm = harm;
  }

  /** Returns the note with one word harmed; empty where it has none that this can harm. */
  Optional<String> harm(String note, int turn) {
    List<Token> victims = Lexer.read(note).stream().filter(victim).toList();
    if (victims.isEmpty()) {
      return Optional.empty();
    }
    Token chosen = victims.get(turn % victims.size());
    return Optional.of(
        note.substring(0, chosen.start())
            + harm.apply(chosen.seen(), turn)
            + note.substring(chosen.end()));
  }

  /** Returns the note with one eye named where the other was; empty where none names both. */
  static Optional<String> oneEyeTwice(String note) {
    List<Token> sides =
        Lexer.read(note).stream()
            .filter(token -> isSide(token) || token.kind() == Token.Kind.BREAK)
            .toList();
    for (int i = 1; i < sides.size(); i++) {
      Token one = sides.get(i - 1);
      Token other = sides.get(i);
      if (isSide(one) && isSide(other) && !one.is(other.text())) {
        return Optional.of(
            note.substring(0, other.start()) + one.seen() + note.substring(other.end()));
      }
    }
    return Optional.empty();
  }

  private static boolean isSide(Token token) {
    return new Cursor(List.of(token), 0).attempt(Common.SIDES).isPresent();
  }

  private static String swapped(String word, int at) {
    return word.substring(0, at) + word.charAt(at + 1) + word.charAt(at) + word.substring(at + 2);
  }
}
