package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The light in which a pupil was measured. */
public enum Lighting implements Concept {
  BRIGHT("Bright light"),
  ROOM("Room light"),
  DIM("Dim light");

  private final Code code;

  Lighting(String display) {
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
