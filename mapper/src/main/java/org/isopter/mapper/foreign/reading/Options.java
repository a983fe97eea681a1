package org.isopter.mapper.foreign.reading;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.isopter.mapper.foreign.vocabulary.DepartmentAliases;
import org.isopter.mapper.json.Limits;

/**
 * What a caller decides about reading.
 *
 * @param stated the time zone of a day that is given without a time, and of a time of a message
 *     (HL7 v2) that has no offset; empty for days in UTC, and for such times as their day alone
 * @param window how far apart in time observations of one person without an encounter or a panel
 *     may lie and still be one examination
 * @param limits how much a document may ask of the machine
 * @param performed the time of observations that state none and of which no report does
 * @param aliases what a department means by codes and words of its own
 */
public record Options(
    Optional<ZoneId> stated,
    Duration window,
    Limits limits,
    Optional<OffsetDateTime> performed,
    DepartmentAliases aliases) {

  public Options {
    if (window.isNegative()) {
      throw new IllegalArgumentException("the window is negative: " + window);
    }
  }

  /** Returns days in UTC, only the same instant as one examination, and the usual limits. */
  public static Options usual() {
    return new Options(
        Optional.empty(), Duration.ZERO, Limits.USUAL, Optional.empty(), DepartmentAliases.none());
  }

  /** Returns the time zone of a day. */
  public ZoneId zone() {
    return stated.orElse(ZoneOffset.UTC);
  }

  /** Returns these options with another time zone. */
  public Options zone(ZoneId other) {
    return new Options(Optional.of(other), window, limits, performed, aliases);
  }

  /** Returns these options with another window for one examination. */
  public Options window(Duration other) {
    return new Options(stated, other, limits, performed, aliases);
  }

  /** Returns these options with other limits. */
  public Options limits(Limits other) {
    return new Options(stated, window, other, performed, aliases);
  }

  /** Returns these options with codes and words of a department. */
  public Options aliases(DepartmentAliases other) {
    return new Options(stated, window, limits, performed, other);
  }

  /** Returns these options with a time for observations that state none. */
  public Options performed(OffsetDateTime other) {
    return new Options(stated, window, limits, Optional.of(other), aliases);
  }
}
