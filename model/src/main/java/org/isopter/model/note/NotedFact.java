package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Measurement;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.note.token.Token;
import org.isopter.model.text.FactStyle;
import org.isopter.model.text.FactWords;

/**
 * A fact and the item that tells it.
 *
 * @param fact the fact
 * @param at where the item starts
 * @param item the item, word for word
 */
record NotedFact(Fact<?> fact, Token at, String item) {

  boolean sameItem(NotedFact other) {
    return at.start() == other.at.start();
  }

  /** Returns the item as one that is not read after all. */
  Unread unread(String why) {
    return new Unread(at.start(), at.line(), at.column(), item, why, item, List.of());
  }

  /** Says whether the two speak of one thing and do not say the same. */
  boolean contradicts(NotedFact other) {
    return isAbout(other)
        && !fact.equals(other.fact)
        && !areTwoDrugs(other)
        && !MovementParts.are(fact, other.fact);
  }

  /** An eye may be given drops of several drugs. */
  private boolean areTwoDrugs(NotedFact other) {
    return fact.finding().equals(Drops.DILATION)
        && !fact.panel()
            .flatMap(EncodedValue::value)
            .equals(other.fact.panel().flatMap(EncodedValue::value));
  }

  private boolean isAbout(NotedFact other) {
    boolean bothFound = fact.panel().isPresent() && other.fact.panel().isPresent();
    return Measurement.areOfOne(fact, other.fact)
        || (bothFound && differOnlyInSaying(Measurement.of(fact), Measurement.of(other.fact)));
  }

  /**
   * One that names no technique may be of the technique of the other; a cover test is seen before
   * it is measured.
   */
  private static boolean differOnlyInSaying(Measurement one, Measurement two) {
    return !one.finding().equals(Alignments.DEVIATION)
        && one.technique().isPresent() != two.technique().isPresent()
        && one.anyTechnique().equals(two.anyTechnique());
  }

  /** Returns the value and its parts in a few words. */
  String words() {
    return FactWords.of(fact, FactStyle.RECORD).value(", ");
  }

  Optional<NotedFact> firstContradicted(List<NotedFact> others) {
    return others.stream().filter(this::contradicts).findFirst();
  }
}
