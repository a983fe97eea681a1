package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How far away the person looked. */
public enum FixationDistance implements Concept {
  FAR("Distance"),
  NEAR("Near");

  private final Code code;

  FixationDistance(String display) {
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
