package org.isopter.mapper.fhir;

import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.People;
import org.isopter.mapper.fhir.element.Repeated;
import org.isopter.model.exam.Header;
import org.isopter.model.wire.ObservationMember;

/** What all observations of an examination say again: what they are, of whom and by whom. */
final class SameEverywhere {

  private final Header header;
  private final Repeated category = new Repeated(ObservationMember.CATEGORY.label());
  private final Repeated subject = new Repeated(ObservationMember.SUBJECT.label());
  private final Repeated performer = new Repeated(ObservationMember.PERFORMER.label());

  SameEverywhere(Header header) {
    this.header = header;
  }

  void category(ElementCursor observation) {
    category.take(observation, () -> ObservationReader.category(observation));
  }

  void subject(ElementCursor observation) {
    subject.take(observation, () -> People.expectSubject(observation, header));
  }

  void performer(ElementCursor observation) {
    performer.take(observation, () -> People.expectPerformer(observation, header));
  }
}
