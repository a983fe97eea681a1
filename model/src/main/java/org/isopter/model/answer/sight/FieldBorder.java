package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The meridian at which a loss of field stops. */
public enum FieldBorder implements Concept {
  VERTICAL("Stops at the vertical meridian"),
  HORIZONTAL("Stops at the horizontal meridian"),
  BOTH("Stops at both meridians"),
  NEITHER("Stops at neither meridian");

  private final Code code;

  FieldBorder(String display) {
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
