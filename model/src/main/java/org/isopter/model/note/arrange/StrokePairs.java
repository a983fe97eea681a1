package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * Puts each of two values behind its eye where values and eyes have a stroke between, in words or
 * with a unit: {@code disc R/L pale/pink}, {@code Hertel 16 mm/18 mm (R/L)}. Each value must be one
 * of the heading, and what stands around the stroke no single value: 6/9.
 */
public final class StrokePairs {

  private final List<Token> clause;
  private final Grammar grammar;

  private StrokePairs(List<Token> clause, Grammar grammar) {
    this.clause = clause;
    this.grammar = grammar;
  }

  /** Returns the note with each value of such a pair behind its side. */
  public static List<Token> parted(List<Token> note, Headings headings) {
    return Clause.mapped(note, clause -> clause(clause, headings).orElse(clause));
  }

  private static Optional<List<Token>> clause(List<Token> clause, Headings headings) {
    boolean comma = clause.stream().anyMatch(token -> token.is(","));
    if (clause.stream().filter(token -> token.is("/")).count() < 2) {
      return Optional.empty();
    }
    return headings
        .certain(clause, 0)
        .filter(found -> found.at() == 0 && !comma && found.grammar().sides().namesAnEye())
        .flatMap(
            found -> {
              StrokePairs pairs = new StrokePairs(clause, found.grammar());
              // What stands behind the heading holds for each eye.
              int conditions = found.grammar().conditionsEnd(clause, found.skipped());
              int start = pairs.behindColon(conditions);
              return pairs.sidesFirst(start).or(() -> pairs.sidesLast(start));
            });
  }

  private Optional<List<Token>> sidesFirst(int at) {
    int values = behindColon(at + 3);
    return areSides(at) ? parted(at, at, values, clause.size()) : Optional.empty();
  }

  private Optional<List<Token>> sidesLast(int at) {
    int end = clause.size();
    boolean brackets = end > 5 && clause.get(end - 1).is(")") && clause.get(end - 5).is("(");
    int sides = brackets ? end - 4 : end - 3;
    int last = brackets ? end - 5 : end - 3;
    return sides > at && areSides(sides) ? parted(at, sides, at, last) : Optional.empty();
  }

  /** Returns the clause with the values between two places, each behind its side. */
  private Optional<List<Token>> parted(int heading, int sides, int from, int to) {
    List<Integer> strokes =
        IntStream.range(from, to).filter(at -> clause.get(at).is("/")).boxed().toList();
    if (strokes.size() != 1) {
      return Optional.empty();
    }
    int stroke = strokes.get(0);
    if (!isValue(from, stroke) || !isValue(stroke + 1, to) || isOneValue(from, to)) {
      return Optional.empty();
    }
    List<Token> out = new ArrayList<>(clause.subList(0, heading));
    out.add(clause.get(sides).at(clause.get(from).start()));
    out.addAll(clause.subList(from, stroke));
    out.add(clause.get(sides + 2).at(clause.get(stroke).start()));
    out.addAll(clause.subList(stroke + 1, to));
    int last = out.size() - 1;
    out.set(last, out.get(last).until(clause.get(clause.size() - 1)));
    return Optional.of(out);
  }

  private boolean isValue(int from, int to) {
    List<Token> words = clause.subList(from, to);
    return words.stream().noneMatch(token -> Common.side(token).isPresent())
        && words.stream().anyMatch(token -> token.kind() != Token.Kind.MARK)
        && grammar.tells(words);
  }

  private boolean isOneValue(int from, int to) {
    return grammar.tells(clause.subList(from, to));
  }

  private boolean areSides(int at) {
    return at + 2 < clause.size()
        && clause.get(at + 1).is("/")
        && side(at).isPresent()
        && side(at + 2).isPresent()
        && !side(at).equals(side(at + 2));
  }

  private Optional<Site> side(int at) {
    return Common.side(clause.get(at)).filter(Site.EACH_EYE::contains);
  }

  private int behindColon(int at) {
    boolean colon = at < clause.size() && (clause.get(at).is(":") || clause.get(at).is("="));
    return colon ? at + 1 : at;
  }
}
