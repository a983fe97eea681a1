package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What was shown in a confrontation test. */
public enum FieldTarget implements Concept {
  FINGER_COUNTING("Counting of still fingers"),
  MOVING_FINGERS("Moving fingers"),
  HAND("Hand"),
  RED_TARGET("Red target"),
  WHITE_TARGET("White target"),
  LIGHT("Light");

  private final Code code;

  FieldTarget(String display) {
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
