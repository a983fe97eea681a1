package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How a pupil answers a stimulus. */
public enum PupilResponse implements Concept {
  BRISK("Brisk"),
  /** It answers; how briskly was not said. */
  REACTIVE(Code.snomed("11214006", "Reactive (qualifier value)")),
  SLUGGISH(Code.snomed("421141009", "Sluggish pupil movement")),
  TONIC(Code.snomed("24225004", "Tonic pupillary reaction (disorder)")),
  ABSENT(Code.snomed("131194007", "Non-Reactive (qualifier value)"));

  private final Code code;

  PupilResponse(String display) {
    this.code = Concept.local(this, display);
  }

  PupilResponse(Code code) {
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
