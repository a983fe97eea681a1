package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a region of the visual field answers the target. */
public enum FieldResponse implements Concept {
  FULL("Full"),
  REDUCED("Reduced"),
  ABSENT("Absent");

  private final Code code;

  FieldResponse(String display) {
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
