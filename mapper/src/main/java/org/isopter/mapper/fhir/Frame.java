package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.model.exam.Header;

/** What every resource of an examination says of the person, the time and the examiner. */
final class Frame {

  private Frame() {}

  static String time(OffsetDateTime time) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
  }

  static void people(Json json, Header header, OffsetDateTime when) {
    json.object("subject", () -> json.party("Patient", header.subject()));
    json.text("effectiveDateTime", time(when));
    header
        .performer()
        .ifPresent(by -> json.single("performer", () -> json.party("Practitioner", by)));
  }
}
