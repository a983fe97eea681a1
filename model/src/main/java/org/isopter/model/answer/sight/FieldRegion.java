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

  /** Returns the key of the part of a field that holds the answer for this region. */
  public String key() {
    return Concept.word(this);
  }

  /** Returns the region in words. */
  public String title() {
    return title;
  }
}
