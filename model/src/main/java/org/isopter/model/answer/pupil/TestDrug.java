package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A drug whose effect on the pupil is the test. */
public enum TestDrug implements Concept {
  COCAINE("Cocaine"),
  APRACLONIDINE("Apraclonidine"),
  HYDROXYAMFETAMINE("Hydroxyamfetamine"),
  PILOCARPINE("Pilocarpine"),
  PHENYLEPHRINE_WEAK("Phenylephrine, dilute");

  private final Code code;

  TestDrug(String display) {
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
