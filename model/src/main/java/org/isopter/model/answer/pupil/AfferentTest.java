package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a relative afferent defect was looked for. */
public enum AfferentTest implements Concept {
  SWINGING_LIGHT("Swinging light, both pupils watched"),
  /** One pupil cannot move; the other is watched while the light swings. */
  REVERSE("Swinging light, only the pupil that can move watched");

  private final Code code;

  AfferentTest(String display) {
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
