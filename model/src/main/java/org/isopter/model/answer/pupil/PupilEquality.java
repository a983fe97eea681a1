package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether the pupils are of one size, as judged by eye. */
public enum PupilEquality implements Concept {
  EQUAL(Code.snomed("301943000", "Pupils equal (finding)")),
  UNEQUAL(Code.snomed("13045009", "Anisocoria (disorder)")),
  RIGHT_LARGER("Unequal, the right one larger"),
  LEFT_LARGER("Unequal, the left one larger");

  private final Code code;

  PupilEquality(String display) {
    this.code = Concept.local(this, display);
  }

  PupilEquality(Code code) {
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
