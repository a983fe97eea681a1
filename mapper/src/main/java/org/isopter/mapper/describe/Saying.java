package org.isopter.mapper.describe;

/** What a column of an answer says, as far as it tells of single persons. */
enum Saying {
  /** What the row is about. */
  WORD,
  /** How many there are. */
  COUNT,
  /** What is computed from the numbers of all persons of the row, such as a mean. */
  SHARED,
  /** A number with half of the persons on either side: of five persons, that of the third. */
  MIDDLE,
  /** A number with a quarter of the persons on one side: of five persons, that of the second. */
  QUARTER,
  /** What one person has, such as the greatest number. */
  OF_ONE,
  /** How many persons are behind the row. */
  BEHIND
}
