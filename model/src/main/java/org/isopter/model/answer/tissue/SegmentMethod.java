package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How the front or the back of the eye was seen. */
public enum SegmentMethod implements Concept {
  TORCH("Torch"),
  SLIT_LAMP(Code.snomed("55468007", "Ocular slit lamp examination (procedure)")),
  SLIT_LAMP_FUNDUS(Code.snomed("410455004", "Slit lamp fundus examination (procedure)")),
  DIRECT_OPHTHALMOSCOPY("Direct ophthalmoscopy"),
  INDIRECT_OPHTHALMOSCOPY(Code.snomed("410451008", "Indirect ophthalmoscopy (procedure)"));

  private final Code code;

  SegmentMethod(String display) {
    this.code = Concept.local(this, display);
  }

  SegmentMethod(Code code) {
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
