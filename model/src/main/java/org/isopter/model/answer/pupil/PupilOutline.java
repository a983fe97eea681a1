package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The outline of a pupil. */
public enum PupilOutline implements Concept {
  ROUND("Round"),
  OVAL("Oval"),
  IRREGULAR(Code.snomed("271732006", "Pupil irregular (finding)")),
  TEARDROP(Code.snomed("421910007", "Teardrop pupil")),
  KEYHOLE("Keyhole, from a coloboma or an operation");

  private final Code code;

  PupilOutline(String display) {
    this.code = Concept.local(this, display);
  }

  PupilOutline(Code code) {
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
