package org.isopter.model.clinical.colour;

/** What a rule makes of a score of colour plates. */
public enum PlateVerdict {
  NORMAL("normal"),
  UNCLASSIFIED("between normal and deficient, unclassified"),
  DEFICIENT("deficient"),
  PASS("pass"),
  FAIL("fail");

  private final String words;

  PlateVerdict(String words) {
    this.words = words;
  }

  /** Returns the verdict in words. */
  public String words() {
    return words;
  }
}
