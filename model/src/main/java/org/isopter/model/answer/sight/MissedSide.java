package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The side of space that a person does not attend to; the sides are the person's own. */
public enum MissedSide implements Concept {
  NONE("Neither side"),
  RIGHT("Right side"),
  LEFT("Left side");

  private final Code code;

  MissedSide(String display) {
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
