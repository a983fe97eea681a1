package org.isopter.mapper.privacy;

/** What gets a pseudonym where it is wanted, and is dropped otherwise. */
public enum Kept {
  /** Who examined. */
  EXAMINER("examiner"),

  /** The instrument as written: two that are written alike are one. */
  DEVICE("device");

  private final String word;

  Kept(String word) {
    this.word = word;
  }

  @Override
  public String toString() {
    return word;
  }
}
