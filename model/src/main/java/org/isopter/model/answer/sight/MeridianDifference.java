package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** In which half of a field a target looks weaker than in the other. */
public enum MeridianDifference implements Concept {
  NONE("Alike in both halves"),
  TEMPORAL_WEAKER("Weaker in the temporal half"),
  NASAL_WEAKER("Weaker in the nasal half");

  private final Code code;

  MeridianDifference(String display) {
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
