package org.isopter.mapper.privacy;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;

/**
 * How finely times are given. A course of visits known to the day, and still more to the minute, is
 * one person's alone.
 */
public enum TimeGrain {
  /** Intervals in whole weeks: the first day of the week of seven days, and no time of day. */
  WEEK("week"),

  /** Intervals in whole days: the day, and no time of day. */
  DAY("day"),

  /** The day, and which quarter of it: from 0, 6, 12 or 18 o'clock. */
  QUARTER("quarter");

  private static final int DAYS_OF_A_WEEK = 7;
  private static final int HOURS_OF_A_QUARTER = 6;

  private final String word;

  TimeGrain(String word) {
    this.word = word;
  }

  /** Returns a time no finer than this. */
  LocalDateTime of(LocalDateTime time) {
    LocalDate day = time.toLocalDate();
    return switch (this) {
      case WEEK ->
          LocalDate.ofEpochDay(
                  Math.floorDiv(day.toEpochDay(), DAYS_OF_A_WEEK) * (long) DAYS_OF_A_WEEK)
              .atStartOfDay();
      case DAY -> day.atStartOfDay();
      case QUARTER ->
          day.atTime(LocalTime.of(time.getHour() / HOURS_OF_A_QUARTER * HOURS_OF_A_QUARTER, 0));
    };
  }

  @Override
  public String toString() {
    return word;
  }
}
