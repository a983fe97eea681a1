package org.isopter.task.page;

import java.util.Locale;

/** The forms of a comparison. */
public enum CompareForm {
  /** For people. */
  TEXT,
  /** For programs: a line for each pair of records. */
  JSON,
  /** A page with pictures over time. */
  HTML;

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
