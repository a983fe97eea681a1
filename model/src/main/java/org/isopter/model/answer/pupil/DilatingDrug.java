package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A drug that widens the pupil. */
public enum DilatingDrug implements Concept {
  TROPICAMIDE("Tropicamide"),
  CYCLOPENTOLATE("Cyclopentolate"),
  PHENYLEPHRINE("Phenylephrine"),
  ATROPINE("Atropine");

  private final Code code;

  DilatingDrug(String display) {
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
