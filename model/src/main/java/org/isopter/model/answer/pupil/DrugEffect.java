package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What a pupil did after the drug. */
public enum DrugEffect implements Concept {
  WIDER("Wider"),
  UNCHANGED("Unchanged"),
  NARROWER("Narrower");

  private final Code code;

  DrugEffect(String display) {
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
