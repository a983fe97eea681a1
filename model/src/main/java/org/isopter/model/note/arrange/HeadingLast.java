package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * Puts a heading before the values that stand before it: {@code 14 IOP R}, {@code R 14 IOP}. All
 * before it must be values of its own, and behind it at most the eye. A heading at the end of an
 * acuity may say how it was tested, and that of a sign whether it is there: there it stays.
 */
public final class HeadingLast {

  private final Headings headings;

  /** The grammar of the part before in the same clause, where its heading was moved. */
  private Optional<Grammar> before = Optional.empty();

  private HeadingLast(Headings headings) {
    this.headings = headings;
  }

  /** Returns the note with such headings before their values. */
  public static List<Token> first(List<Token> note, Headings headings) {
    return Clause.mapped(note, clause -> new HeadingLast(headings).clause(clause));
  }

  private List<Token> clause(List<Token> clause) {
    List<Token> out = new ArrayList<>();
    int start = 0;
    for (int at = 0; at <= clause.size(); at++) {
      if (at == clause.size() || clause.get(at).is(",")) {
        out.addAll(part(clause.subList(start, at), start == 0, at == clause.size()));
        out.addAll(clause.subList(at, Math.min(at + 1, clause.size())));
        start = at + 1;
      }
    }
    return out;
  }

  private List<Token> part(List<Token> part, boolean first, boolean last) {
    Optional<Headings.Found> found =
        headings.at(part, 0).isPresent()
            ? Optional.empty()
            : IntStream.range(1, part.size())
                .mapToObj(at -> headings.certain(part, at))
                .flatMap(Optional::stream)
                .findFirst()
                .filter(next -> isBehindValues(next, part))
                .filter(next -> isClear(next, part, first, last));
    before = found.map(Headings.Found::grammar);
    return found.map(next -> moved(next, part)).orElse(part);
  }

  private static boolean isBehindValues(Headings.Found found, List<Token> part) {
    List<Token> values = part.subList(0, found.at());
    // A single letter may be a mark of a value before it: 0.4 V, vertical.
    boolean correction = found.heading().kept() && isOfDistance(found);
    return !correction
        && found.heading().spoken().length() > 1
        && found.grammar().sides().namesAnEye()
        && !Denial.isOfSign(found.grammar())
        && values.stream().noneMatch(Denial::isNo)
        && found.grammar().tells(values);
  }

  private boolean isClear(Headings.Found found, List<Token> part, boolean first, boolean last) {
    boolean sided = part.subList(0, found.at()).stream().anyMatch(HeadingLast::isSide);
    int end = end(found, part);
    if (end < part.size()) {
      Cursor behind = new Cursor(part, end);
      return !sided && behind.attempt(Common.SIDES).isPresent() && behind.atEnd();
    }
    boolean bare = found.end() == end;
    boolean goesOn = before.equals(Optional.of(found.grammar()));
    return sided
        && bare
        && (isOfNoAcuity(found) ? first || goesOn : first && last && isOfDistance(found));
  }

  /** Returns where the heading and the conditions behind it end: VA with glasses. */
  private static int end(Headings.Found found, List<Token> part) {
    return found.grammar().conditionsEnd(part, found.end());
  }

  private static boolean isOfNoAcuity(Headings.Found found) {
    return found.grammar().sides() != Grammar.Sides.EACH_OR_ASKED
        && !WordFiles.is(WordRole.PINHOLE, found.heading().phrase().get(0));
  }

  private static boolean isOfDistance(Headings.Found found) {
    return found.grammar().whole().contains(Acuities.DISTANCE);
  }

  private static boolean isSide(Token token) {
    return Common.side(token).isPresent();
  }

  /** Returns the part with its heading first; the last word reaches to the end of the part. */
  private static List<Token> moved(Headings.Found found, List<Token> part) {
    int start = part.get(0).start();
    int end = end(found, part);
    List<Token> out = new ArrayList<>();
    part.subList(found.at(), end).forEach(word -> out.add(word.at(start)));
    out.addAll(part.subList(0, found.at()));
    out.addAll(part.subList(end, part.size()));
    int last = out.size() - 1;
    out.set(last, out.get(last).until(part.get(part.size() - 1)));
    return out;
  }
}
