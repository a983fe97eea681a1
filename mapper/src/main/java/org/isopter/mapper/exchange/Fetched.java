package org.isopter.mapper.exchange;

/**
 * How much was fetched.
 *
 * @param answers how many pages of a search, or files of an export
 * @param resources how many resources they hold
 * @param deleted how many resources an export says were deleted
 * @param troubles how many things the server says that it could not give
 */
public record Fetched(int answers, long resources, long deleted, long troubles) {

  /** Nothing. */
  static final Fetched NOTHING = new Fetched(0, 0, 0, 0);

  Fetched plus(Fetched more) {
    return new Fetched(
        answers + more.answers,
        resources + more.resources,
        deleted + more.deleted,
        troubles + more.troubles);
  }
}
