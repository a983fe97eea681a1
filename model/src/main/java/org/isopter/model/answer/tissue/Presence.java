package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether a sign is there. */
public enum Presence implements Concept {
  PRESENT(Code.snomed("52101004", "Present (qualifier value)")),
  ABSENT(Code.snomed("2667000", "Absent (qualifier value)")),
  EQUIVOCAL(Code.snomed("42425007", "Equivocal (qualifier value)"));

  private final Code code;

  Presence(Code code) {
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
