package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How the eyes stand to each other when one is covered. */
public enum Alignment implements Concept {
  STRAIGHT("Straight: no movement on covering"),
  ESO("Inward: esophoria or esotropia"),
  EXO("Outward: exophoria or exotropia"),
  RIGHT_HYPER("Right eye higher"),
  LEFT_HYPER("Left eye higher");

  private final Code code;

  Alignment(String display) {
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
