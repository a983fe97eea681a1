package org.isopter.model.exam;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Where the examination took place, as far as it changes what could be tested. */
public enum Setting implements Concept {
  BEDSIDE("Bedside"),
  CLINIC("Clinic"),
  EMERGENCY("Emergency department"),
  WARD("Ward"),
  HOME("Home"),
  SCREENING("Screening");

  private final Code code;

  Setting(String display) {
    this.code = Concept.local(this, display);
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  @Override
  public Code code() {
    return code;
  }
}
