package org.isopter.model.note;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Site;

/**
 * The facts of a note of which no item contradicts another, and the items that do.
 *
 * @param facts the facts; one that is said twice alike is there once
 * @param unread one entry for every item that contradicts another, naming the place of the other
 */
record Contradictions(List<Fact<?>> facts, List<Unread> unread) {

  private static final String APART =
      ": keep one, or tell what sets them apart: correction, light, technique or time";

  static Contradictions among(List<NotedFact> noted) {
    Set<Integer> refused = new LinkedHashSet<>();
    List<Unread> unread = new ArrayList<>();
    for (NotedFact one : noted) {
      one.firstContradicted(noted)
          .filter(other -> refused.add(one.at().start()))
          .ifPresent(other -> unread.add(entry(one, other)));
    }
    Set<Fact<?>> facts = new LinkedHashSet<>();
    noted.stream()
        .filter(one -> !refused.contains(one.at().start()))
        .forEach(one -> facts.add(one.fact()));
    return new Contradictions(MovementParts.joined(List.copyOf(facts)), unread);
  }

  private static Unread entry(NotedFact one, NotedFact other) {
    String where =
        one.sameItem(other)
            ? "the same item"
            : "line " + other.at().line() + ", column " + other.at().column();
    Site site = one.fact().site();
    String eyes = site == Site.BOTH ? "both eyes" : site.word() + " eye";
    String finding = one.fact().finding().title() + ", " + eyes;
    String why = finding + ": " + one.words() + " here, " + other.words() + " at " + where + APART;
    return one.unread(why);
  }
}
