package org.isopter.mapper.foreign.reading;

import java.util.Locale;
import java.util.Optional;

/** The releases of FHIR that can be read. */
public enum Release {
  R4,
  R4B,
  R5;

  /**
   * Returns the release that a word names, in any case, or by its version such as {@code 5.0.0}.
   */
  public static Optional<Release> of(String word) {
    return switch (word.toUpperCase(Locale.ROOT)) {
      case "R4", "4.0", "4.0.1" -> Optional.of(R4);
      case "R4B", "4.3", "4.3.0" -> Optional.of(R4B);
      case "R5", "5.0", "5.0.0" -> Optional.of(R5);
      default -> Optional.empty();
    };
  }
}
