package org.isopter.model.check;

import java.util.Locale;

/** How bad a violation is, the worst first. */
public enum Severity {
  /** The record cannot be right. */
  ERROR,
  /** The record is probably wrong or lacks what a reader needs. */
  WARNING,
  /** The record may well be right; a second look costs little. */
  INFORMATION;

  /** Returns the word for messages, in lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
