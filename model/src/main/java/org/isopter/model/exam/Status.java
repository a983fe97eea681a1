package org.isopter.model.exam;

import java.util.Optional;
import org.isopter.model.value.Concept;

/**
 * How far an examination record has come; the words are those of FHIR's observation status.
 *
 * <p>There is no {@code corrected}: a record that was changed is {@code amended} and names the one
 * it replaces.
 */
public enum Status {
  PRELIMINARY,
  FINAL,
  AMENDED,
  ENTERED_IN_ERROR;

  /** Returns the word that records and FHIR use. */
  public String word() {
    return Concept.word(this);
  }

  /** Returns the status that a word names. */
  public static Optional<Status> of(String word) {
    for (Status status : values()) {
      if (status.word().equals(word)) {
        return Optional.of(status);
      }
    }
    return Optional.empty();
  }
}
