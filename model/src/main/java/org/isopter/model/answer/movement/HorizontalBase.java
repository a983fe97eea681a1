package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The direction of the base of a horizontal prism. */
public enum HorizontalBase implements Concept {
  IN("Base in"),
  OUT("Base out");

  private final Code code;

  HorizontalBase(String display) {
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
