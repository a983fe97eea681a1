package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether there is an eye in the socket. */
public enum GlobeState implements Concept {
  PRESENT("Eye present"),
  SHRUNKEN("Shrunken, sightless eye"),
  REMOVED("No eye"),
  PROSTHESIS("No eye, a prosthesis worn");

  private final Code code;

  GlobeState(String display) {
    this.code = Concept.local(this, display);
  }

  /** Says whether there is no eye to examine. */
  public boolean isGone() {
    return this == REMOVED || this == PROSTHESIS;
  }

  /** Says whether the eye is gone or shrunken, so that it sees nothing. */
  public boolean isSightless() {
    return this != PRESENT;
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
