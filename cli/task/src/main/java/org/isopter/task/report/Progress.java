package org.isopter.task.report;

import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.isopter.task.io.Streams;

/**
 * Shows on a terminal how far a long run has come: one line that is written over. Where nobody
 * watches it shows nothing.
 */
public final class Progress implements AutoCloseable {

  private static final long SECOND = 1_000_000_000L;

  /** A short run needs no progress; often enough for the eye. */
  private static final long FIRST = SECOND;

  private static final long EVERY = SECOND / 5;

  private final PrintStream out;
  private final boolean watched;
  private final String noun;
  private final LongSupplier clock;
  private final long start;
  private long next;
  private long done;
  private int width;
  private boolean over;

  /** Makes a display; the clock tells nanoseconds. */
  Progress(PrintStream out, boolean watched, String noun, LongSupplier clock) {
    this.out = out;
    this.watched = watched;
    this.noun = noun;
    this.clock = clock;
    this.start = clock.getAsLong();
    this.next = start + FIRST;
  }

  /** Makes a display of things of a kind, on standard error if that is a terminal. */
  public static Progress on(Streams streams, String noun) {
    return new Progress(streams.err(), streams.terminal(), noun, System::nanoTime);
  }

  /** Notes how many are done. */
  public void at(long count) {
    at(count, -1);
  }

  /** Notes how many are done, and which share of all that is, from 0 to 1; -1 if unknown. */
  public void at(long count, double share) {
    done = count;
    long now = clock.getAsLong();
    if (!watched || now < next) {
      return;
    }
    next = now + EVERY;
    String part = share < 0 ? "" : String.format(Locale.ROOT, "  %3.0f %%", 100 * share);
    show(String.format(Locale.ROOT, "%,d %s  %,d/s%s", done, noun, rate(now), part));
  }

  /** Takes the line away, so that words can follow. */
  public void clear() {
    if (width > 0) {
      out.print("\r" + " ".repeat(width) + "\r");
      out.flush();
      width = 0;
    }
  }

  @Override
  public void close() {
    end();
  }

  /** Ends the display; of a run that was long enough to be watched it tells how long it took. */
  public void end() {
    long now = clock.getAsLong();
    clear();
    boolean after = over;
    over = true;
    if (watched && !after && now - start >= FIRST) {
      double seconds = (now - start) / (double) SECOND;
      out.print(
          String.format(
              Locale.ROOT, "isopter: %,d %s in %.1f s, %,d/s%n", done, noun, seconds, rate(now)));
    }
  }

  private long rate(long now) {
    return Math.round(done / Math.max((now - start) / (double) SECOND, 1e-3));
  }

  private void show(String text) {
    out.print("\r" + text + " ".repeat(Math.max(0, width - text.length())));
    out.flush();
    width = text.length();
  }
}
