package org.isopter.model.value;

import java.time.OffsetDateTime;
import java.util.Optional;

/** A time with its offset as records and FHIR can both hold it. */
public final class Times {

  /** No place on earth is farther from UTC, and FHIR's dates and times allow no more. */
  private static final int FARTHEST_HOURS = 14;

  /** Pools move times on by a hundred years and more, and FHIR's years have four digits. */
  private static final int LAST_YEAR = 9800;

  private Times() {}

  /** Returns what stands in the way of a time, or nothing; the fault's path is empty. */
  public static Optional<Fault> check(OffsetDateTime time) {
    if (Math.abs(time.getOffset().getTotalSeconds()) > FARTHEST_HOURS * 3600) {
      String wanted = "an offset from UTC of at most " + FARTHEST_HOURS + " hours";
      return Optional.of(Fault.of("", time.getOffset().toString(), wanted));
    }
    return time.getYear() < 1 || time.getYear() > LAST_YEAR
        ? Optional.of(Fault.of("", "the year " + time.getYear(), "a year from 1 to " + LAST_YEAR))
        : Optional.empty();
  }

  /**
   * Returns the time of a text, as {@link OffsetDateTime#parse} does; most are of a plain form.
   *
   * @throws java.time.format.DateTimeParseException when the text is no time with its offset
   */
  public static OffsetDateTime parse(String text) {
    return PlainTime.of(text).orElseGet(() -> OffsetDateTime.parse(text));
  }

  /**
   * Returns the time unchanged.
   *
   * @throws FaultException when something stands in its way
   */
  public static OffsetDateTime require(String path, OffsetDateTime time) {
    check(time)
        .ifPresent(
            fault -> {
              throw new FaultException(fault.at(path));
            });
    return time;
  }
}
