package org.isopter.mapper.http;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * A body that ends with a failure where nothing comes for too long, or where it takes too long in
 * all: a server that sends a byte a minute holds nobody.
 */
final class WatchedBody extends FilterInputStream {

  private static final ScheduledExecutorService WATCH =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "answers");
            thread.setDaemon(true);
            return thread;
          });

  private final long silence;
  private final long end;
  private final Future<?> watch;
  private volatile long last = System.nanoTime();
  private volatile boolean late;

  WatchedBody(InputStream body, Duration silence, Duration all) {
    super(body);
    this.silence = silence.toNanos();
    this.end = last + all.toNanos();
    long every = Math.max(1, silence.toMillis() / 4);
    this.watch = WATCH.scheduleWithFixedDelay(this::look, every, every, TimeUnit.MILLISECONDS);
  }

  private void look() {
    long now = System.nanoTime();
    if (now - last > silence || now - end > 0) {
      late = true;
      try {
        in.close();
      } catch (IOException closed) {
        // The one that reads finds it closed, and says why.
        watch.cancel(false);
      }
    }
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    try {
      int read = super.read(into, from, length);
      last = System.nanoTime();
      if (read < 0 && late) {
        throw new IOException("closed");
      }
      return read;
    } catch (IOException failed) {
      throw late ? new IOException("the server stopped sending before the end", failed) : failed;
    }
  }

  @Override
  public void close() throws IOException {
    watch.cancel(false);
    super.close();
  }
}
