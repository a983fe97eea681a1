package org.isopter.model.finding;

/**
 * Where a fact of the trade comes from.
 *
 * @param text the published source, or {@code common practice, no source}, or {@code from memory}
 */
public record Citation(String text) {

  /** A fact that every textbook states and none could be cited for. */
  public static final Citation COMMON_PRACTICE = new Citation("common practice, no source");
}
