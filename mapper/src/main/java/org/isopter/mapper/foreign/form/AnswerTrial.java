package org.isopter.mapper.foreign.form;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.observation.Translation;

/** What became of the last answer beside a finding when both were read together. */
enum AnswerTrial {
  /** It was taken as a part of the finding. */
  TAKEN,
  /** The finding has no place for it, and is not read because of it. */
  NO_PLACE,
  /** It changes nothing, contradicts the finding, or the finding is not read for another reason. */
  OTHERWISE;

  /**
   * Returns what became of an answer.
   *
   * @param as the member of the Observation that it stands in; the last one, of a list
   */
  static AnswerTrial of(Translation read, String as) {
    Place root = read.ledger().root();
    List<Place> list = root.list(as);
    Optional<Place> place =
        list.isEmpty() ? root.child(as) : Optional.of(list.get(list.size() - 1));
    if (!read.facts().isEmpty() || read.piece().isPresent()) {
      return place.filter(Place::isTaken).isPresent() ? TAKEN : OTHERWISE;
    }
    boolean noPlace =
        !read.reasons().isEmpty()
            && read.reasons().stream()
                .allMatch(
                    reason ->
                        reason.why() == Why.UNREAD_QUALIFIER
                            && reason.fault().path().startsWith("/" + as));
    return noPlace ? NO_PLACE : OTHERWISE;
  }
}
