package org.isopter.mapper.http;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.ThreadLocalRandom;

/** Time and chance, as far as repeated requests need them. */
public interface Pause {

  /** Those of the machine. */
  Pause REAL =
      new Pause() {
        @Override
        public Instant now() {
          return Instant.now();
        }

        @Override
        public void sleep(Duration time) throws InterruptedException {
          Thread.sleep(time.toMillis());
        }

        @Override
        public double chance() {
          return ThreadLocalRandom.current().nextDouble();
        }
      };

  /** Returns the time. */
  Instant now();

  /** Waits. */
  void sleep(Duration time) throws InterruptedException;

  /** Returns a number from 0 to 1 at random. */
  double chance();
}
