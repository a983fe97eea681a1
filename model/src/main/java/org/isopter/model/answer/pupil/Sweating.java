package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Sweating of one side of the face. */
public enum Sweating implements Concept {
  NORMAL("Normal"),
  REDUCED("Reduced"),
  ABSENT("Absent");

  private final Code code;

  Sweating(String display) {
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
