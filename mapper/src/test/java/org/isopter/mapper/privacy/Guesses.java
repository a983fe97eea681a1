package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.IntToLongFunction;

/**
 * The days on which examinations truly were, and whether an attacker's guesses find them better
 * than by chance.
 *
 * <p>Chance is the same guess for the same courses dealt out to other persons: what is left when
 * nothing in the pool belongs to the day that is guessed.
 *
 * @param truths the day of each row that the attacker sees, counted from 1970
 */
public record Guesses(List<Long> truths) {

  private static final int WEEK = 7;

  /** Returns the first day, which often is no secret. */
  public long first() {
    return truths.stream().mapToLong(Long::longValue).min().orElseThrow();
  }

  /** Returns the last day. */
  public long last() {
    return truths.stream().mapToLong(Long::longValue).max().orElseThrow();
  }

  /** Within four standard deviations of what the same guesses find among other persons' days. */
  public void assertChance(IntToLongFunction guess) {
    int dealt = 20;
    double chance = 0;
    for (int turn = 1; turn <= dealt; turn++) {
      chance += hits(guess, turn * (truths.size() / (dealt + 1))) / (double) dealt;
    }
    double spread = Math.sqrt(Math.max(chance, 1));
    long hits = hits(guess);
    assertTrue(hits <= chance + 4 * spread, hits + " found, " + chance + " by chance");
  }

  /** Returns how many days a guess finds to within a week. */
  public long hits(IntToLongFunction guess) {
    return hits(guess, 0);
  }

  private long hits(IntToLongFunction guess, int turned) {
    long hits = 0;
    for (int at = 0; at < truths.size(); at++) {
      long other = truths.get((at + turned) % truths.size());
      hits += Math.abs(guess.applyAsLong(at) - other) <= WEEK ? 1 : 0;
    }
    return hits;
  }
}
