package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A set of colour plates. */
public enum ColourTest implements Concept {
  ISHIHARA("Ishihara plates"),
  HARDY_RAND_RITTLER("Hardy-Rand-Rittler plates"),
  OTHER_PLATES("Other colour plates");

  private final Code code;

  ColourTest(String display) {
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
