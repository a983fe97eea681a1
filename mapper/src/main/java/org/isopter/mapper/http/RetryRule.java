package org.isopter.mapper.http;

import java.time.Duration;
import java.util.Set;

/**
 * How often a request is repeated, how long is waited before, and when it is over.
 *
 * @param tries the most times that one request is sent
 * @param first the wait before the second time, doubled each time after; up to half of it is left
 *     out at random, so that those who were turned away together do not come back together
 * @param longest the longest such wait; a server may ask for a longer one
 * @param silence how long a server may send nothing
 * @param total how long all requests together may take
 */
public record RetryRule(
    int tries, Duration first, Duration longest, Duration silence, Duration total) {

  /** Eight times, from half a second to a minute; a minute of silence; an hour in all. */
  public static final RetryRule USUAL =
      new RetryRule(
          8,
          Duration.ofMillis(500),
          Duration.ofMinutes(1),
          Duration.ofMinutes(1),
          Duration.ofHours(1));

  /** Statuses that may pass by themselves (RFC 9110, RFC 6585). */
  private static final Set<Integer> PASSING = Set.of(408, 425, 429, 502, 503, 504);

  /**
   * Statuses that pass seldom: a conflict (409) does when the other writer is done, and one with
   * what is stored does not.
   */
  private static final Set<Integer> SELDOM = Set.of(409, 500);

  private static final int TRIES_OF_SELDOM = 3;

  /** Returns this rule with another limit for all requests together. */
  public RetryRule within(Duration all) {
    return new RetryRule(tries, first, longest, silence, all);
  }

  /** Says whether an answer after so many tries is worth another one. */
  boolean repeats(int status, int tried) {
    return isBusy(status)
        ? tried < tries
        : SELDOM.contains(status) && tried < Math.min(tries, TRIES_OF_SELDOM);
  }

  /** Says whether a status is about the server, and not about what it was asked. */
  boolean isBusy(int status) {
    return PASSING.contains(status);
  }

  /** Returns the wait after so many tries where the server asks for none. */
  Duration pauseAfter(int tried, double chance) {
    double doubled = first.toMillis() * Math.pow(2, tried - 1.0);
    double most = Math.min(doubled, (double) longest.toMillis());
    return Duration.ofMillis(Math.round(most * (1 - chance / 2)));
  }
}
