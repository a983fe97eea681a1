package org.isopter.mapper.http;

import java.net.http.HttpClient;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A clock that is moved on where others wait. */
public final class FakePause implements Pause {

  /** A client for all tests. */
  public static final HttpClient HTTP = HttpClients.of(Optional.empty(), Optional.empty());

  /** The usual rule, with less patience for silence. */
  public static final RetryRule QUICK =
      new RetryRule(
          8,
          Duration.ofMillis(500),
          Duration.ofMinutes(1),
          Duration.ofMillis(400),
          Duration.ofHours(1));

  private final List<Duration> waits = new ArrayList<>();
  private Instant now = Instant.parse("2026-11-28T08:00:00Z");

  @Override
  public Instant now() {
    return now;
  }

  @Override
  public void sleep(Duration time) {
    waits.add(time);
    now = now.plus(time);
  }

  @Override
  public double chance() {
    return 0.5;
  }

  /** Returns what was waited. */
  public List<Duration> waits() {
    return waits;
  }
}
