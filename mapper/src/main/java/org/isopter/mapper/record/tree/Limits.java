package org.isopter.mapper.record.tree;

import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** Bounds that keep a hostile or broken text from using up memory or stack. */
public final class Limits {

  /** The most characters of one record; a full examination has some ten thousand. */
  public static final int LENGTH = 1_000_000;

  /** A record nests five deep: findings, finding, site, entry, part, reason. */
  private static final int DEPTH = 16;

  private Limits() {}

  /**
   * Refuses what nests deeper than any record.
   *
   * @throws FaultException when it does
   */
  static void depth(TextPlace place, int depth) {
    if (depth > DEPTH) {
      String position = "line " + place.line() + ", column " + place.column();
      throw new FaultException(
          Fault.of(
              position,
              "brackets or lists nested deeper than " + DEPTH,
              "a record, which nests five deep"));
    }
  }

  static void duplicate(TextPlace key, Complaints complaints) {
    complaints.add(
        key,
        "the same key a second time",
        "every key once",
        "more than one entry at a site stand in a list");
  }
}
