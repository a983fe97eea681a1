package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What the eye looked through when its acuity was measured. */
public enum Correction implements Concept {
  UNAIDED("Unaided"),
  SPECTACLES(Code.snomed("50121007", "Eye glasses, device (physical object)")),
  CONTACT_LENSES(Code.snomed("57368009", "Contact lenses, device (physical object)")),
  TRIAL_LENSES("Best correction in trial lenses"),
  BEST("Best corrected, with what is not stated"),
  HABITUAL("Habitual correction, kind not stated"),
  CORRECTED("Corrected, neither kind nor habit stated");

  private final Code code;

  Correction(String display) {
    this.code = Concept.local(this, display);
  }

  Correction(Code code) {
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
