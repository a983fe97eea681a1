package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Refractions.Refraction;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Sharing;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * Additions behind the refraction of both eyes. One that stands in a sentence of its own belongs to
 * the refraction before it: {@code R -2.00 DS L -1.00 DS. Add +2.00 OU}.
 */
final class Additions {

  private static final Set<String> LENS = Set.of("refraction", "x", "ds", "retinoscopy", "plano");

  private Additions() {}

  static List<Token> joined(List<Token> note) {
    List<Token> out = new ArrayList<>();
    int before = 0;
    int clause = 0;
    for (int i = 0; i < note.size(); i++) {
      Token token = note.get(i);
      boolean end = token.kind() == Token.Kind.BREAK;
      boolean joins = end && isAddition(note, i + 1) && isLens(out.subList(clause, out.size()));
      boolean pair = joins && isLens(out.subList(before, clause)) && isOfOneEye(out.get(clause));
      if (pair && isOfBoth(note, i + 1)) {
        out.set(clause - 1, out.get(clause - 1).as(Token.Kind.MARK, ","));
      }
      out.add(joins ? token.as(Token.Kind.MARK, ",") : token);
      before = end && !joins ? clause : before;
      clause = end && !joins ? out.size() : clause;
    }
    return List.copyOf(out);
  }

  private static boolean isAddition(List<Token> note, int at) {
    return at + 1 < note.size() && note.get(at).is("add") && !note.get(at + 1).is(":");
  }

  private static boolean isOfBoth(List<Token> note, int addition) {
    return note.subList(addition, note.size()).stream()
        .takeWhile(token -> token.kind() != Token.Kind.BREAK)
        .anyMatch(token -> Common.side(token).equals(Optional.of(Site.BOTH)));
  }

  /** Says whether a line starts with an eye: the lens of the other stands on the line before. */
  private static boolean isOfOneEye(Token first) {
    return Common.side(first).filter(side -> side != Site.BOTH).isPresent();
  }

  private static boolean isLens(List<Token> clause) {
    return clause.stream().anyMatch(token -> LENS.contains(token.text()));
  }

  /**
   * Refuses an addition behind the second eye alone: {@code OD -2.00 DS; OS -1.00 DS add +2.00}.
   *
   * @param noted what was said before
   * @param item what the item says
   */
  static void requireOfEach(List<NotedFact> noted, List<Fact<?>> item) throws NotRead {
    List<Lens> lenses = item.stream().flatMap(Additions::lens).toList();
    Optional<Lens> before =
        noted.stream().map(NotedFact::fact).flatMap(Additions::lens).reduce((one, next) -> next);
    boolean last = lenses.size() == 1 && before.filter(lenses.get(0)::isOfFellow).isPresent();
    if (last && lenses.get(0).addition() && !before.orElseThrow().addition()) {
      throw NotRead.because(Sharing.OF_ONE_OR_BOTH);
    }
  }

  private static Stream<Lens> lens(Fact<?> fact) {
    return fact.outcome().ifFound().stream()
        .filter(Refraction.class::isInstance)
        .map(Refraction.class::cast)
        .map(lens -> new Lens(fact.site(), fact.method(), lens.addition().isPresent()));
  }

  private record Lens(Site eye, Optional<?> method, boolean addition) {

    boolean isOfFellow(Lens other) {
      return other.eye.equals(eye.fellow()) && other.method.equals(method);
    }
  }
}
