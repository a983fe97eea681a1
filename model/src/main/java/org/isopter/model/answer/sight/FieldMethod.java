package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a visual field was tested. */
public enum FieldMethod implements Concept {
  CONFRONTATION(Code.snomed("410560002", "Confrontation visual field test (procedure)")),
  PERIMETRY(Code.snomed("103752008", "Perimetry")),
  FLAT_SCREEN("Flat screen at a stated distance");

  private final Code code;

  FieldMethod(String display) {
    this.code = Concept.local(this, display);
  }

  FieldMethod(Code code) {
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
