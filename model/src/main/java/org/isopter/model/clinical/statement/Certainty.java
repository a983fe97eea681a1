package org.isopter.model.clinical.statement;

/** How sure a derived statement is. */
public enum Certainty {
  /** It follows from the facts by arithmetic or by definition. */
  COMPUTED("computed"),
  /** It is what a named rule set says of the facts. */
  BY_RULE("by a named rule set"),
  /** It holds under a named convention; another convention may answer otherwise. */
  BY_CONVENTION("by a named convention"),
  /** One row of a published table fits the facts; what no table lists may fit as well. */
  ONE_FITS("one fits"),
  /** Several rows of a published table fit the facts. */
  SEVERAL_FIT("several fit"),
  /** No single row of a published table fits the facts. */
  NONE_FITS("none fits"),
  /** The facts do not carry an answer. */
  CANNOT_TELL("cannot tell");

  private final String words;

  Certainty(String words) {
    this.words = words;
  }

  /** Returns the certainty in words. */
  public String words() {
    return words;
  }
}
