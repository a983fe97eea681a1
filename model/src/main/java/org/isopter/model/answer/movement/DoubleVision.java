package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether the person sees double, and whether it goes when one eye is closed. */
public enum DoubleVision implements Concept {
  NONE("No double vision"),
  BINOCULAR("Binocular: gone with either eye closed"),
  MONOCULAR("Monocular: still there with one eye closed");

  private final Code code;

  DoubleVision(String display) {
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
