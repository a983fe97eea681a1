package org.isopter.model.exam;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The sex that an administration keeps of a person: the words and codes of FHIR. */
public enum AdministrativeSex implements Concept {
  MALE("Male"),
  FEMALE("Female"),
  OTHER("Other"),
  UNKNOWN("Unknown");

  private static final String SYSTEM = "http://hl7.org/fhir/administrative-gender";

  private final String display;

  AdministrativeSex(String display) {
    this.display = display;
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  @Override
  public Code code() {
    return new Code(SYSTEM, word(), display);
  }
}
