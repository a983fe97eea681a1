package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.model.exam.Fact;

/**
 * What came of an observation.
 *
 * @param head of whom and when; empty where it was refused
 * @param facts what was taken; none where it was refused
 * @param ledger the account of its leaves
 * @param reasons why it, or something in it, was not taken
 * @param piece what it gives to a measurement that is sent in several observations
 * @param joins the number of the observation that holds the fact to which this one gives a part
 */
public record Translation(
    Optional<Head> head,
    List<Fact<?>> facts,
    Ledger ledger,
    List<Reason> reasons,
    Optional<Piece> piece,
    Optional<Integer> joins) {

  /**
   * A part of a measurement that stands as an observation of its own.
   *
   * @param holder the observation
   * @param meaning what its code says
   * @param sides what is said of its eye
   */
  record Piece(Place holder, Meaning meaning, List<Meaning.Side> sides) {}

  /** Returns what came of a resource that was kept. */
  public static Translation kept(Ledger ledger, List<Reason> reasons) {
    return new Translation(
        Optional.empty(), List.of(), ledger, reasons, Optional.empty(), Optional.empty());
  }

  /** Returns what came of an observation that was taken. */
  static Translation taken(Head head, List<Fact<?>> facts, Ledger ledger, List<Reason> reasons) {
    return new Translation(
        Optional.of(head), facts, ledger, reasons, Optional.empty(), Optional.empty());
  }

  /** Returns this as the holder of a fact that was put together. */
  Translation holding(Fact<?> fact) {
    return new Translation(head, List.of(fact), ledger, reasons, piece, Optional.empty());
  }

  /** Returns this as one that gives a part to a fact of another. */
  Translation joining(int other) {
    return new Translation(head, List.of(), ledger, reasons, piece, Optional.of(other));
  }
}
