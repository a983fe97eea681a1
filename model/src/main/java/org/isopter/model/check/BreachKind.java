package org.isopter.model.check;

import java.util.Locale;

/** In which way a record breaks a rule. */
public enum BreachKind {
  /** The facts cannot all be true. */
  IMPOSSIBLE,
  /** The facts speak against one another. */
  CONTRADICTORY,
  /** A fact lacks what makes sense of it. */
  INCOMPLETE,
  /** The facts may be true but seldom are. */
  IMPLAUSIBLE;

  /** Returns the word for messages, in lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
