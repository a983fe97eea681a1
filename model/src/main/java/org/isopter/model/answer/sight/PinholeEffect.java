package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What a pinhole did to an acuity that it did not improve. */
public enum PinholeEffect implements Concept {
  NOT_IMPROVED("Not improved");

  private final Code code;

  PinholeEffect(String display) {
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
