package org.isopter.mapper.v2;

import java.time.ZoneId;
import java.util.Optional;
import org.isopter.mapper.hl7.Hl7Time;

/**
 * What is known of times without an offset.
 *
 * @param offset that of the time of the message, which holds for all of it (HL7 v2.5.1, section
 *     2A.3.22); empty where it has none
 * @param zone the time zone that the reader was told; empty where it was told none
 */
record V2Clock(String offset, Optional<ZoneId> zone) {

  /**
   * Returns a time as FHIR writes it: with its own offset, or else that of the message, or else
   * that of the zone; without any, or where the clocks of the zone showed that hour twice or never,
   * the day alone.
   */
  Optional<String> time(String text) {
    return Hl7Time.version2(text).map(time -> time.text(offset.isEmpty() ? inZone(time) : offset));
  }

  private String inZone(Hl7Time time) {
    return zone.flatMap(time::offsetIn).orElse("");
  }
}
