package org.isopter.mapper.fhir;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.model.exam.Header;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.ObservationMember;

/** What every resource of an examination says of the person, the time and the examiner. */
final class Frame {

  /** The member that says when something was seen. */
  static final String EFFECTIVE = ObservationMember.EFFECTIVE.of(BaseElements.TIME);

  private Frame() {}

  static String time(OffsetDateTime time) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
  }

  static void people(Json json, Header header, OffsetDateTime when) {
    subject(json, header);
    effective(json, when);
    performer(json, header);
  }

  static void subject(Json json, Header header) {
    json.object(ObservationMember.SUBJECT.label(), () -> json.party("Patient", header.subject()));
  }

  static void effective(Json json, OffsetDateTime when) {
    json.text(EFFECTIVE, time(when));
  }

  static void performer(Json json, Header header) {
    String name = ObservationMember.PERFORMER.label();
    header.performer().ifPresent(by -> json.single(name, () -> json.party("Practitioner", by)));
  }
}
