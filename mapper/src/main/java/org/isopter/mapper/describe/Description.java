package org.isopter.mapper.describe;

import java.util.List;

/**
 * What is said of a pool.
 *
 * @param listings the tables of counts, in the order in which one looks at them
 * @param spreads the numbers, for drawing
 * @param answers the answers, for drawing
 */
public record Description(List<Listing> listings, List<Spread> spreads, List<Answered> answers) {
  public Description {
    listings = List.copyOf(listings);
    spreads = List.copyOf(spreads);
    answers = List.copyOf(answers);
  }
}
