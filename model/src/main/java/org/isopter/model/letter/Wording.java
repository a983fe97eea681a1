package org.isopter.model.letter;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.model.exam.Fact;

/** Other words for findings than those of a letter, for instance shorthand. */
@FunctionalInterface
public interface Wording {

  /** Letter words for everything. */
  Wording LETTER = (fact, performed) -> Optional.empty();

  /**
   * Returns the whole fact in words; empty where the letter's words are to be taken.
   *
   * @param fact a fact with a value
   * @param performed the time of the examination
   */
  public Optional<String> of(Fact<?> fact, OffsetDateTime performed);
}
