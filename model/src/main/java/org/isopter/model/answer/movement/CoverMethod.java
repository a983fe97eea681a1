package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a deviation was looked for. */
public enum CoverMethod implements Concept {
  ALTERNATE_COVER(Code.snomed("400919009", "Alternate cover test (procedure)")),
  COVER_UNCOVER("Cover and uncover test"),
  CORNEAL_REFLEXES("Corneal light reflexes");

  private final Code code;

  CoverMethod(String display) {
    this.code = Concept.local(this, display);
  }

  CoverMethod(Code code) {
    this.code = code;
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
