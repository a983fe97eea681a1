package org.isopter.mapper.privacy;

/**
 * Where the times of a person are moved to. The more the spread exceeds the years that a pool is
 * about, the less the first and the last of its moved times tell.
 */
public enum DateShift {
  /** By one to two hundred years ahead, so that no one takes them for real. */
  AHEAD("ahead", 36_525, 36_525),

  /**
   * By up to fifty years back, and a day at least: for tools that take no time in the future, or
   * long ago, such as the data-quality rules of the OMOP Common Data Model. Such a time looks real,
   * and is not.
   */
  BACK("back", -18_263, 18_262);

  private final String word;
  private final int from;
  private final int spread;

  DateShift(String word, int from, int spread) {
    this.word = word;
    this.from = from;
    this.spread = spread;
  }

  /** Returns by how many days the times of a person are moved; the same for the same name. */
  int days(SecretKey key, String person) {
    return from + key.number("days", person, spread);
  }

  @Override
  public String toString() {
    return word;
  }
}
