package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A direction of gaze, right and left being the person's own. */
public enum GazeDirection implements Concept {
  UP_RIGHT("Up and right"),
  UP("Up"),
  UP_LEFT("Up and left"),
  RIGHT("Right"),
  PRIMARY("Straight ahead"),
  LEFT("Left"),
  DOWN_RIGHT("Down and right"),
  DOWN("Down"),
  DOWN_LEFT("Down and left");

  private final Code code;

  GazeDirection(String display) {
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
