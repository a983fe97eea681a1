package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The direction of the base of a vertical prism. */
public enum VerticalBase implements Concept {
  UP("Base up"),
  DOWN("Base down");

  private final Code code;

  VerticalBase(String display) {
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
