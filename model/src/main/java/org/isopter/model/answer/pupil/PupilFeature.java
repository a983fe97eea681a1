package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** What a pupil does or looks like besides its size, outline and responses. */
public enum PupilFeature implements Concept {
  /** It widens more slowly than its fellow when the light goes out. */
  DILATION_LAG("Dilation lag"),
  /** Parts of its edge move and others do not. */
  SEGMENTAL_MOVEMENT("Segmental movement"),
  /** It swings in steady light. */
  HIPPUS("Hippus"),
  /** It lies off the centre of the iris. */
  CORECTOPIA("Corectopia");

  private final Code code;

  PupilFeature(String display) {
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
