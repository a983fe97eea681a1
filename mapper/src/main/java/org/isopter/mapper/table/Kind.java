package org.isopter.mapper.table;

/** What the cells of a column hold; a cell may always be empty. */
public enum Kind {
  /** A {@link String}. */
  TEXT,
  /** A {@link Double}. */
  NUMBER,
  /** A {@link Long}. */
  INTEGER,
  /** A {@link Boolean}. */
  TRUTH,
  /** A {@link java.time.LocalDateTime}. */
  TIME
}
