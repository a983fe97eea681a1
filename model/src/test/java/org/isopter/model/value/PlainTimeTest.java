package org.isopter.model.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Times are read as the parser of the platform reads them. */
class PlainTimeTest {

  private static final long SEED = Long.getLong("seed", 20_261_128L);
  private static final List<String> TIMES =
      List.of(
          "2026-03-02T09:30:00+01:00",
          "2026-03-02T09:30-11:30",
          "2026-12-28T23:59:59Z",
          "0001-01-01T00:00Z",
          "2026-03-02T09:30:00.125+01:00",
          "2026-02-28T24:00:00+00:00");

  @Test
  void readsWhatIsPlain() {
    for (String time : TIMES.subList(0, 4)) {
      assertEquals(Optional.of(OffsetDateTime.parse(time)), PlainTime.of(time), time);
    }
  }

  @Test
  void leavesAnythingElseToTheParser() {
    for (String time :
        List.of(
            "",
            "2026-03-02",
            "2026-03-02T09:30",
            "2026-03-02t09:30Z",
            "2026-02-29T09:30Z",
            "2026-13-02T09:30Z",
            "2026-03-02T24:00Z",
            "2026-03-02T09:30:60Z",
            "2026-03-02T09:30:00.5Z",
            "2026-03-02T09:30:00+15:00",
            "2026-03-02T09:30:00+01",
            "2026-03-02T09:30:00+01:00:30",
            "0000-03-02T09:30Z",
            "٢٠٢٦-03-02T09:30Z")) {
      assertEquals(Optional.empty(), PlainTime.of(time), time);
    }
  }

  @Test
  void agreesWithTheParserOnRandomChanges() {
    Random random = new Random(SEED);
    int taken = 0;
    for (int i = 0; i < 200_000; i++) {
      StringBuilder changed = new StringBuilder(TIMES.get(random.nextInt(TIMES.size())));
      for (int n = random.nextInt(3); n >= 0; n--) {
        char other = "0123456789:-+TZ. ".charAt(random.nextInt(17));
        int at = random.nextInt(changed.length());
        if (random.nextInt(8) == 0) {
          changed.deleteCharAt(at);
        } else {
          changed.setCharAt(at, other);
        }
      }
      String text = changed.toString();
      Optional<OffsetDateTime> read = PlainTime.of(text);
      if (read.isPresent()) {
        taken++;
        assertEquals(parsed(text), read, "seed " + SEED + ": " + text);
      }
    }
    assertTrue(taken > 10_000, () -> "most changes of a digit are times");
  }

  private static Optional<OffsetDateTime> parsed(String text) {
    try {
      return Optional.of(OffsetDateTime.parse(text));
    } catch (DateTimeParseException none) {
      return Optional.empty();
    }
  }
}
