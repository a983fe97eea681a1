package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The margin of an optic disc. */
public enum DiscMargin implements Concept {
  CLEAR("Clear"),
  PARTLY_BLURRED("Blurred in part"),
  BLURRED("Blurred all round");

  private final Code code;

  DiscMargin(String display) {
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
