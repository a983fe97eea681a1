package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sign of the optic disc besides its colour, margin, swelling and cup. */
public enum DiscSign implements Concept {
  CROWDED("Crowded disc"),
  TILTED("Tilted disc"),
  RIM_NOTCH("Notch of the rim"),
  SHUNT_VESSELS("Shunt vessels on the disc");

  private final Code code;

  DiscSign(String display) {
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
