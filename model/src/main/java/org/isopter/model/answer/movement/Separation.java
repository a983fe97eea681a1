package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How the two images lie to each other. */
public enum Separation implements Concept {
  HORIZONTAL("Side by side"),
  VERTICAL("One above the other"),
  OBLIQUE("Oblique"),
  TORSIONAL("Tilted");

  private final Code code;

  Separation(String display) {
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
