package org.isopter.model.answer.movement;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The kind of nystagmus. */
public enum NystagmusKind implements Concept {
  NONE("No nystagmus"),
  HORIZONTAL_JERK("Horizontal jerk nystagmus"),
  DOWNBEAT(Code.snomed("307676006", "Downbeat nystagmus (disorder)")),
  UPBEAT(Code.snomed("307677002", "Upbeat nystagmus (disorder)")),
  GAZE_EVOKED(Code.snomed("1220537002", "Gaze-evoked nystagmus (disorder)")),
  LATENT(Code.snomed("68610001", "Latent nystagmus (disorder)")),
  PENDULAR(Code.snomed("35743001", "Pendular nystagmus")),
  ROTARY(Code.snomed("44526006", "Rotary nystagmus")),
  OTHER("Other nystagmus");

  private final Code code;

  NystagmusKind(String display) {
    this.code = Concept.local(this, display);
  }

  NystagmusKind(Code code) {
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
