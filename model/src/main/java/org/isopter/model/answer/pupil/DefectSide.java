package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The eye whose afferent pathway answers less; never both, for equal damage cancels out. */
public enum DefectSide implements Concept {
  NONE("No relative afferent defect"),
  RIGHT(Code.snomed("24028007", "Right (qualifier value)")),
  LEFT(Code.snomed("7771000", "Left (qualifier value)")),
  /** The eyes may or may not differ; it is neither a defect nor the absence of one. */
  EQUIVOCAL(Code.snomed("42425007", "Equivocal (qualifier value)"));

  private final Code code;

  DefectSide(String display) {
    this.code = Concept.local(this, display);
  }

  DefectSide(Code code) {
    this.code = code;
  }

  /** Says whether a defect was found in one of the eyes. */
  public boolean isDefect() {
    return this == RIGHT || this == LEFT;
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
