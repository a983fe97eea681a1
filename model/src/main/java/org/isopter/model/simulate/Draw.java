package org.isopter.model.simulate;

import java.util.List;
import java.util.random.RandomGenerator;

/** Draws from one source of randomness. */
final class Draw {

  private final RandomGenerator random;

  Draw(RandomGenerator random) {
    this.random = random;
  }

  boolean chance(Likelihood what) {
    return random.nextDouble() < what.share();
  }

  boolean chance(Relation share) {
    return random.nextDouble() < share.number();
  }

  double place() {
    return random.nextDouble();
  }

  double normal() {
    return random.nextGaussian();
  }

  /** Returns a number from the least to the most, both included. */
  int between(int least, int most) {
    return least + random.nextInt(most - least + 1);
  }

  <T> T pick(List<T> things) {
    return things.get(random.nextInt(things.size()));
  }

  <T> T pick(Shares<T> shares) {
    return shares.pick(random);
  }
}
