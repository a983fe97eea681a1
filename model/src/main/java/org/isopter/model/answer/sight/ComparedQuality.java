package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What of a target is compared. */
public enum ComparedQuality implements Concept {
  RED("Redness"),
  BRIGHTNESS("Brightness");

  private final Code code;

  ComparedQuality(String display) {
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
