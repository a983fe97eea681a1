package org.isopter.model.answer.sight;

import org.isopter.model.value.Concept;

/** A region of the visual field of one eye that is tested by confrontation. */
public enum FieldRegion {
  SUPEROTEMPORAL("Superotemporal quadrant"),
  SUPERONASAL("Superonasal quadrant"),
  INFEROTEMPORAL("Inferotemporal quadrant"),
  INFERONASAL("Inferonasal quadrant"),
  CENTRAL("Centre");

  private final String title;

  FieldRegion(String title) {
    this.title = title;
  }

  public String key() {
    return Concept.word(this);
  }

  public String title() {
    return title;
  }
}
