package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sector of the optic disc; nasal and temporal are those of the eye that is looked at. */
public enum DiscSector implements Concept {
  SUPERIOR("Superior sector"),
  SUPEROTEMPORAL("Superotemporal sector"),
  TEMPORAL("Temporal sector"),
  INFEROTEMPORAL("Inferotemporal sector"),
  INFERIOR("Inferior sector"),
  INFERONASAL("Inferonasal sector"),
  NASAL("Nasal sector"),
  SUPERONASAL("Superonasal sector");

  private final Code code;

  DiscSector(String display) {
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
