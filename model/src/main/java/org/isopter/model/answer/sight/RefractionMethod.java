package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a refraction was found. */
public enum RefractionMethod implements Concept {
  SUBJECTIVE(Code.snomed("397277005", "Subjective refraction (procedure)")),
  OBJECTIVE(Code.snomed("397276001", "Objective refraction (procedure)")),
  RETINOSCOPY(Code.snomed("397524001", "Retinoscopy (procedure)")),
  AUTOREFRACTION("Automated refraction");

  private final Code code;

  RefractionMethod(String display) {
    this.code = Concept.local(this, display);
  }

  RefractionMethod(Code code) {
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
