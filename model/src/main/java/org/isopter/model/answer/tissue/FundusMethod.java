package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How the optic disc was seen. */
public enum FundusMethod implements Concept {
  DIRECT_OPHTHALMOSCOPY("Direct ophthalmoscopy"),
  INDIRECT_OPHTHALMOSCOPY(Code.snomed("410451008", "Indirect ophthalmoscopy (procedure)")),
  BINOCULAR_INDIRECT_OPHTHALMOSCOPY(
      Code.snomed("410453006", "Binocular indirect ophthalmoscopy (procedure)")),
  SLIT_LAMP(Code.snomed("410455004", "Slit lamp fundus examination (procedure)")),
  PHOTOGRAPH("Fundus photograph");

  private final Code code;

  FundusMethod(String display) {
    this.code = Concept.local(this, display);
  }

  FundusMethod(Code code) {
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
