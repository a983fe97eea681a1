package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The examiner's word for the size of a blind spot; no cut-off is published. */
public enum BlindSpotSize implements Concept {
  NORMAL("Normal size"),
  ENLARGED(Code.snomed("33970004", "Enlarged blind spot (finding)"));

  private final Code code;

  BlindSpotSize(String display) {
    this.code = Concept.local(this, display);
  }

  BlindSpotSize(Code code) {
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
