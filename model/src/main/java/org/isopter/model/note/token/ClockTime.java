package org.isopter.model.note.token;

import java.time.Duration;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A time as it was written: on the clock of 24 hours, with am or pm, or so that it may be in the
 * morning as well as in the afternoon.
 *
 * @param readings the times that it may be, the earlier one first
 */
public record ClockTime(List<LocalTime> readings) {

  /** How far from the examination a time may lie for its half of the day to be clear. */
  private static final Duration CLINIC = Duration.ofHours(4);

  /** Takes a time of day where one stands here. */
  public static Optional<ClockTime> read(Cursor cursor) {
    cursor.takeAny("@", "at");
    return cursor
        .attempt(ClockTime::fourDigits)
        .or(() -> cursor.attempt(ClockTime::pointed))
        .or(() -> cursor.attempt(ClockTime::apart))
        .or(() -> cursor.attempt(ClockTime::hour));
  }

  /** Reads hours and minutes with a colon or an h between: 10:30, 10h30, 2:30 pm. */
  private static Optional<ClockTime> apart(Cursor cursor) {
    Optional<String> hour = cursor.digits().filter(text -> text.matches("[01]?\\d|2[0-3]"));
    boolean hours = hour.isPresent() && cursor.take("h");
    if (hour.isEmpty() || (!hours && !cursor.take(":"))) {
      return Optional.empty();
    }
    Optional<String> minute = cursor.digits().filter(text -> text.matches("[0-5]\\d"));
    return minute.map(
        text -> hours ? exact(hour.get(), text, cursor) : of(hour.get(), text, cursor));
  }

  /** Reads an hour with am or pm close behind it: 10am. */
  private static Optional<ClockTime> hour(Cursor cursor) {
    Optional<String> hour = cursor.digits().filter(text -> text.matches("[1-9]|1[0-2]"));
    boolean named = cursor.isClose() && (cursor.sees("am") || cursor.sees("pm"));
    return hour.filter(any -> named).map(text -> of(text, "00", cursor));
  }

  /**
   * Reads hours and minutes with a point between, where am, pm, o'clock, an at or the nought of a
   * clock makes it a time: 09.45.
   */
  private static Optional<ClockTime> pointed(Cursor cursor) {
    boolean at = cursor.sawAt();
    Optional<String> time =
        cursor.digits().filter(text -> text.matches("(?:[01]?\\d|2[0-3])[.][0-5]\\d"));
    boolean hours = time.filter(text -> text.matches("(?:0?[7-9]|1\\d|2\\d)[.].*")).isPresent();
    boolean nought = time.filter(text -> text.matches("0[7-9][.].*")).isPresent();
    boolean named =
        nought || (at && hours) || cursor.sees("am") || cursor.sees("pm") || cursor.sees("hrs");
    return time.filter(any -> named)
        .map(
            text -> {
              int point = text.indexOf('.');
              String hour = text.substring(0, point);
              String minute = text.substring(point + 1);
              return cursor.sees("hrs") ? exact(hour, minute, cursor) : of(hour, minute, cursor);
            });
  }

  /** The h of French and hrs stand on the clock of 24 hours. */
  private static ClockTime exact(String hour, String minute, Cursor cursor) {
    cursor.takeAny("hrs");
    return new ClockTime(List.of(LocalTime.of(Integer.parseInt(hour), Integer.parseInt(minute))));
  }

  private static ClockTime of(String hour, String minute, Cursor cursor) {
    boolean morning = cursor.take("am");
    boolean afternoon = cursor.take("pm");
    return cursor.take("hrs")
        ? exact(hour, minute, cursor)
        : of(hour, Integer.parseInt(minute), morning, afternoon);
  }

  /** Reads the clock of 24 hours without its colon: @ 1430, 1430h, and 0930 even without an at. */
  private static Optional<ClockTime> fourDigits(Cursor cursor) {
    boolean at = cursor.sawAt();
    return cursor
        .digits()
        .filter(text -> text.matches("(?:[01]\\d|2[0-3])[0-5]\\d"))
        .filter(text -> cursor.takeAny("h", "hrs", "hours") || at || text.startsWith("0"))
        .map(text -> exact(text.substring(0, 2), text.substring(2), cursor));
  }

  private static ClockTime of(String hour, int minute, boolean morning, boolean afternoon) {
    int number = Integer.parseInt(hour);
    LocalTime written = LocalTime.of(number, minute);
    if (number == 0 || number > 12) {
      return new ClockTime(List.of(written));
    }
    LocalTime early = LocalTime.of(number % 12, minute);
    LocalTime late = LocalTime.of(number % 12 + 12, minute);
    if (morning || afternoon) {
      return new ClockTime(List.of(afternoon ? late : early));
    }
    // 02:30 has the nought of the clock of 24 hours; so has 12:30, which is nobody's night.
    boolean clear = hour.startsWith("0") || number == 12;
    return new ClockTime(clear ? List.of(written) : List.of(early, late));
  }

  /**
   * Returns the time on the day of the examination.
   *
   * @throws NotRead when it may be in the morning or in the afternoon, and not exactly one of the
   *     two lies within a few hours of the examination
   */
  public OffsetDateTime on(OffsetDateTime performed) throws NotRead {
    List<OffsetDateTime> times = readings.stream().map(performed::with).toList();
    List<OffsetDateTime> near = times.stream().filter(time -> isNear(time, performed)).toList();
    return Stream.of(times, near)
        .filter(some -> some.size() == 1)
        .map(some -> some.get(0))
        .findFirst()
        .orElseThrow(
            () ->
                NotRead.because("it may be in the morning or in the afternoon")
                    .write("IOP R 14 @ " + readings.get(0)));
  }

  private static boolean isNear(OffsetDateTime time, OffsetDateTime performed) {
    return Duration.between(performed, time).abs().compareTo(CLINIC) < 0;
  }
}
