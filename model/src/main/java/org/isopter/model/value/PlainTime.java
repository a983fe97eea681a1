package org.isopter.model.value;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * Reads times such as 2026-03-02T09:30:00+01:00, with or without seconds, by their places; the
 * parser of the platform takes ten times as long. Anything else, and the last days of a month, are
 * left to that.
 */
final class PlainTime {

  private static final int NONE = -1;

  /** Every month has so many days. */
  private static final int SAFE_DAY = 28;

  private static final int MINUTES = "2026-03-02T09:30".length();
  private static final int SECONDS = "2026-03-02T09:30:00".length();

  /** The most that this reads; no time is written farther from UTC. */
  private static final int FARTHEST_HOURS = 14;

  private PlainTime() {}

  static Optional<OffsetDateTime> of(String text) {
    if (text.length() <= MINUTES) {
      return Optional.empty();
    }
    boolean seconds = text.charAt(MINUTES) == ':';
    int end = seconds ? SECONDS : MINUTES;
    int offset = offset(text, end);
    int year = year(text);
    int month = pair(text, 5, 12);
    int day = pair(text, 8, SAFE_DAY);
    int hour = pair(text, 11, 23);
    int minute = pair(text, 14, 59);
    int second = seconds ? pair(text, 17, 59) : 0;
    boolean marked =
        text.charAt(4) == '-'
            && text.charAt(7) == '-'
            && text.charAt(10) == 'T'
            && text.charAt(13) == ':';
    boolean plain = marked && year > 0 && month > 0 && day > 0 && hour >= 0 && minute >= 0;
    return plain && second >= 0 && offset != Integer.MIN_VALUE
        ? Optional.of(
            OffsetDateTime.of(
                year,
                month,
                day,
                hour,
                minute,
                second,
                0,
                offset == 0 ? ZoneOffset.UTC : ZoneOffset.ofTotalSeconds(60 * offset)))
        : Optional.empty();
  }

  private static int year(String text) {
    int century = pair(text, 0, 99);
    int rest = pair(text, 2, 99);
    return century < 0 || rest < 0 ? NONE : 100 * century + rest;
  }

  /** Returns the minutes from UTC; the least of all numbers where it is not written plainly. */
  private static int offset(String text, int at) {
    if (text.length() == at + 1 && text.charAt(at) == 'Z') {
      return 0;
    }
    boolean shaped =
        text.length() == at + 6
            && text.charAt(at + 3) == ':'
            && (text.charAt(at) == '+' || text.charAt(at) == '-');
    int hours = shaped ? pair(text, at + 1, FARTHEST_HOURS) : NONE;
    int minutes = shaped ? pair(text, at + 4, 59) : NONE;
    if (hours < 0 || minutes < 0) {
      return Integer.MIN_VALUE;
    }
    return (text.charAt(at) == '-' ? -1 : 1) * (60 * hours + minutes);
  }

  /** Returns the number of two digits, or less than zero where it is none or too large. */
  private static int pair(String text, int at, int most) {
    if (at + 2 > text.length()) {
      return NONE;
    }
    int tens = text.charAt(at) - '0';
    int ones = text.charAt(at + 1) - '0';
    boolean digits = tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9;
    int number = 10 * tens + ones;
    return digits && number <= most ? number : NONE;
  }
}
