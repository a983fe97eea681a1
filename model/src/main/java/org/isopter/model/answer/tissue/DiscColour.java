package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The colour of an optic disc. */
public enum DiscColour implements Concept {
  PINK("Pink, as usual"),
  TEMPORAL_PALLOR("Temporal pallor"),
  PALE(Code.snomed("302200001", "Pallor of optic disc")),
  /** Pale in one sector. */
  SECTOR_PALLOR("Pale in a sector"),
  /** Pale on the nasal and the temporal side, the poles kept. */
  BAND_PALLOR("Pale in a band across the disc"),
  HYPERAEMIC("Hyperaemic");

  private final Code code;

  DiscColour(String display) {
    this.code = Concept.local(this, display);
  }

  DiscColour(Code code) {
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
