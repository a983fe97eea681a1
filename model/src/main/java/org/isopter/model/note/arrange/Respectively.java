package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * Puts each of two values beside its eye where "respectively" says which is whose: {@code IOP 14
 * and 16 R and L respectively}. Exactly two words that join stand in the clause, or it stays as it
 * is and is not read.
 */
public final class Respectively {

  private static final String WORD = "respectively";

  private static final String AND = "and";

  /** Words before an eye that say nothing themselves: in the right. */
  private static final List<String> LEADS = List.of("in", "the", "of", "for", "on");

  private Respectively() {}

  /** Returns the words of a note with the values so parted. */
  public static List<Token> parted(List<Token> note) {
    return note.stream().anyMatch(token -> token.is(WORD))
        ? Clause.mapped(note, clause -> clause(clause).orElse(clause))
        : note;
  }

  private static Optional<List<Token>> clause(List<Token> clause) {
    int last = clause.size() - 1;
    List<Integer> ands =
        IntStream.range(0, clause.size()).filter(i -> clause.get(i).is(AND)).boxed().toList();
    if (last < 5 || !clause.get(last).is(WORD) || ands.size() != 2 || ands.get(0) == 0) {
      return Optional.empty();
    }
    return behind(clause, ands.get(0), ands.get(1)).or(() -> before(clause, ands.get(0)));
  }

  /** Parts the values before their eyes: 14 and 16 R and L respectively. */
  private static Optional<List<Token>> behind(List<Token> clause, int values, int eyes) {
    int last = clause.size() - 1;
    Optional<Eye> second = eye(clause, eyes + 1).filter(eye -> eye.end() == last);
    Optional<Eye> first = eyeBefore(clause, values + 2, eyes);
    if (second.isEmpty() || first.isEmpty() || same(first.get(), second.get())) {
      return Optional.empty();
    }
    List<Token> out = new ArrayList<>(clause.subList(0, values));
    out.addAll(first.get().at(clause.get(values - 1).end()));
    out.addAll(clause.subList(values, first.get().start()));
    out.addAll(second.get().words());
    return Optional.of(out);
  }

  /** Parts the values behind their eyes: R and L 14 and 16 respectively. */
  private static Optional<List<Token>> before(List<Token> clause, int eyes) {
    int last = clause.size() - 1;
    Optional<Eye> second = eye(clause, eyes + 1);
    Optional<Eye> first = eyeBefore(clause, 0, eyes);
    if (second.isEmpty() || first.isEmpty() || same(first.get(), second.get())) {
      return Optional.empty();
    }
    int values = second.get().end();
    int and = values;
    while (!clause.get(and).is(AND)) {
      and++;
    }
    if (and == values || and + 1 == last) {
      return Optional.empty();
    }
    List<Token> out = new ArrayList<>(clause.subList(0, first.get().start()));
    out.addAll(first.get().at(clause.get(values).start()));
    out.addAll(clause.subList(values, and + 1));
    out.addAll(second.get().at(clause.get(and).end()));
    out.addAll(clause.subList(and + 1, last));
    return Optional.of(out);
  }

  /** Returns the longest words for an eye that start at a place or behind it and end at another. */
  private static Optional<Eye> eyeBefore(List<Token> clause, int from, int end) {
    return IntStream.range(from, end)
        .mapToObj(at -> eye(clause, at))
        .flatMap(Optional::stream)
        .filter(eye -> eye.end() == end)
        .findFirst();
  }

  private static boolean same(Eye one, Eye other) {
    return one.side() == other.side();
  }

  private static Optional<Eye> eye(List<Token> clause, int at) {
    Cursor cursor = new Cursor(clause, at);
    while (!cursor.atEnd() && LEADS.contains(cursor.token().text())) {
      cursor.back(cursor.place() + 1);
    }
    return cursor
        .attempt(Common.SIDES)
        .filter(Site.EACH_EYE::contains)
        .map(side -> new Eye(side, at, cursor.place(), clause.subList(at, cursor.place())));
  }

  private record Eye(Site side, int start, int end, List<Token> words) {

    /** Returns the words as if they stood at a place of the note, so that places only go up. */
    List<Token> at(int place) {
      return words.stream().map(word -> word.at(place)).toList();
    }
  }
}
