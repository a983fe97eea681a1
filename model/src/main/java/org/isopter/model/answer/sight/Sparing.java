package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether a part of a field that is otherwise lost is spared. */
public enum Sparing implements Concept {
  SPARED("Spared"),
  LOST("Lost with the rest");

  private final Code code;

  Sparing(String display) {
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
