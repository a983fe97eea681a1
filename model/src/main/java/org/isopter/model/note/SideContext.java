package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.habit.OtherTimes;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * The eye that a line or a block of lines is about: {@code R: VA 6/9, IOP 14}.
 *
 * <p>A side and a colon hold for the clause that they start; at the start of a line, for the line;
 * alone on a line, with or without a colon, for the lines below it up to an empty line. They never
 * hold where another side is named.
 */
final class SideContext {

  /**
   * An eye before a colon.
   *
   * @param site the eye, or both
   * @param ofPart whether the heading of a part of the examination names it: Fundus OD:
   */
  private record Label(Site site, boolean ofPart) {}

  private Optional<Label> block = Optional.empty();
  private Optional<Label> line = Optional.empty();
  private Optional<Label> clause = Optional.empty();
  private boolean mixed;

  /** Takes note of the clause and says whether it is nothing but the start of a block. */
  boolean enter(Clause next, List<Clause> note) {
    clause = opening(next.tokens()).filter(side -> sides(next.tokens()) == 1);
    if (next.afterGap()) {
      block = Optional.empty();
    }
    if (next.newLine()) {
      List<Token> tokens =
          note.stream()
              .filter(other -> other.line() == next.line())
              .flatMap(other -> other.tokens().stream())
              .toList();
      line = opening(tokens);
      mixed = sides(tokens) > (line.isPresent() ? 1 : 0);
      boolean alone = line.isPresent() && isOnlySide(tokens);
      block = alone ? line : line.isPresent() ? Optional.empty() : block;
      return alone;
    }
    return false;
  }

  /** Forgets the eye, for it may have changed: nothing has a side until one is named clearly. */
  void lose() {
    block = Optional.empty();
    line = Optional.empty();
    clause = Optional.empty();
  }

  /** Forgets the eye where something that was not read names another. */
  void leave(List<Token> unread) {
    Optional<Site> here = clause.or(() -> line).or(() -> block).map(Label::site);
    Cursor cursor = new Cursor(unread, 0);
    while (here.isPresent() && !cursor.atEnd()) {
      Optional<Site> named = cursor.attempt(Common.SIDES);
      if (named.isPresent() && !named.equals(here)) {
        lose();
        return;
      }
      cursor.back(named.isPresent() ? cursor.place() : cursor.place() + 1);
    }
  }

  /** Returns the eye of an item that names none; of a part, only of what is seen in the eye. */
  Optional<Site> side(Grammar item) {
    return clause
        .or(() -> line.or(() -> block).filter(any -> !mixed))
        .filter(label -> !label.ofPart() || Grammars.isSeenInEye(item))
        .map(Label::site);
  }

  private static Optional<Label> opening(List<Token> line) {
    Cursor cursor = behindHeading(line);
    boolean ofPart = cursor.place() > 0;
    return cursor
        .attempt(Common.SIDES)
        .filter(side -> cursor.take(":") || cursor.atEnd())
        .map(side -> new Label(side, ofPart));
  }

  /** Returns the place behind the heading of a part of the examination, if one starts the line. */
  private static Cursor behindHeading(List<Token> line) {
    return new Cursor(line, !line.isEmpty() && OtherTimes.startPart(line) ? 1 : 0);
  }

  private static boolean isOnlySide(List<Token> line) {
    Cursor cursor = behindHeading(line);
    cursor.attempt(Common.SIDES);
    cursor.take(":");
    return cursor.atEnd();
  }

  private static int sides(List<Token> line) {
    int sides = 0;
    Cursor cursor = new Cursor(line, 0);
    while (!cursor.atEnd()) {
      if (cursor.attempt(Common.SIDES).isPresent()) {
        sides++;
      } else {
        cursor.back(cursor.place() + 1);
      }
    }
    return sides;
  }
}
