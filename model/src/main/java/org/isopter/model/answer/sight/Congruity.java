package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether the losses of the two eyes match. */
public enum Congruity implements Concept {
  CONGRUOUS("Congruous"),
  INCONGRUOUS("Incongruous");

  private final Code code;

  Congruity(String display) {
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
