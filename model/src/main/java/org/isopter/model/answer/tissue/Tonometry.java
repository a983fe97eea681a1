package org.isopter.model.answer.tissue;

import java.util.List;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** How the pressure in an eye was measured. */
public enum Tonometry implements Concept {
  GOLDMANN(Code.snomed("389152008", "Goldmann applanation tonometry (procedure)")),
  PERKINS(Code.snomed("389151001", "Perkins applanation tonometry (procedure)")),
  APPLANATION(Code.snomed("252803002", "Applanation tonometry")),
  NON_CONTACT(Code.snomed("389150000", "Non-contact tonometry (procedure)")),
  REBOUND(Code.snomed("1286870002", "Rebound tonometry (procedure)")),
  PNEUMATIC(Code.snomed("252804008", "Pneumatic tonometry")),
  DYNAMIC_CONTOUR("Dynamic contour tonometry"),
  INDENTATION("Indentation tonometry"),
  PALPATION(Code.snomed("252805009", "Digital tonometry")),
  OTHER(Code.snomed("164729009", "Tonometry (procedure)"));

  private final Code code;

  Tonometry(String display) {
    this.code = Concept.local(this, display);
  }

  Tonometry(Code code) {
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

  /** Indentation once travelled under the code of one instrument. */
  @Override
  public List<Code> formerCodes() {
    return this == INDENTATION
        ? List.of(Code.snomed("389149000", "Schiotz tonometry (procedure)"))
        : Concept.super.formerCodes();
  }
}
