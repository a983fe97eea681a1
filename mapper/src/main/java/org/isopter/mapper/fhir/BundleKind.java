package org.isopter.mapper.fhir;

import java.util.Locale;
import java.util.Optional;

/** The kinds of bundle that an examination can be written as. */
public enum BundleKind {
  /** The resources with ids of their own, to be read. */
  COLLECTION,
  /** Conditional updates by identifier, to be sent to a server; sending again changes nothing. */
  TRANSACTION,
  /** A document with a composition first. */
  DOCUMENT;

  /** Returns the word that FHIR uses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Returns the word that FHIR uses, for messages and options. */
  @Override
  public String toString() {
    return word();
  }

  /** Returns the kind that a word names. */
  public static Optional<BundleKind> of(String word) {
    for (BundleKind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
