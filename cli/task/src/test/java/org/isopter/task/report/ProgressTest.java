package org.isopter.task.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import org.junit.jupiter.api.Test;

/** How far a long run has come is shown to who watches, and to nobody else. */
class ProgressTest {

  private static final long SECOND = 1_000_000_000L;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private long now;

  private Progress progress(boolean watched) {
    return new Progress(new PrintStream(out, true, UTF_8), watched, "lines", () -> now);
  }

  @Test
  void showsOneLineThatIsWrittenOver() {
    Progress progress = progress(true);
    now = 2 * SECOND;
    progress.at(10_000, 0.25);
    now = 3 * SECOND;
    progress.at(12_000, 0.5);
    String first = "\r10,000 lines  5,000/s   25 %";
    assertEquals(first + "\r12,000 lines  4,000/s   50 %", out.toString(UTF_8));
    progress.clear();
    assertTrue(out.toString(UTF_8).endsWith("\r" + " ".repeat(first.length() - 1) + "\r"));
  }

  @Test
  void showsNothingBeforeASecondAndNotTooOften() {
    Progress progress = progress(true);
    now = SECOND / 2;
    progress.at(5);
    assertEquals("", out.toString(UTF_8));
    now = 2 * SECOND;
    progress.at(6);
    now = 2 * SECOND + SECOND / 10;
    progress.at(7);
    assertEquals("\r6 lines  3/s", out.toString(UTF_8));
  }

  @Test
  void tellsCountAndRateAtTheEndOnce() {
    Progress progress = progress(true);
    now = 4 * SECOND;
    progress.at(1000);
    progress.end();
    progress.close();
    assertTrue(
        out.toString(UTF_8)
            .endsWith("\risopter: 1,000 lines in 4.0 s, 250/s" + System.lineSeparator()),
        out.toString(UTF_8));
  }

  @Test
  void isSilentWhereNobodyWatches() {
    Progress progress = progress(false);
    now = 9 * SECOND;
    progress.at(1000);
    progress.close();
    assertEquals("", out.toString(UTF_8));
  }
}
