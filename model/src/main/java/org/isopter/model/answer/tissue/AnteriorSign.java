package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sign in the front of the eye. */
public enum AnteriorSign implements Concept {
  CONJUNCTIVAL_REDNESS("Redness of the conjunctiva"),
  CORNEAL_OEDEMA(Code.snomed("27194006", "Corneal edema")),
  CORNEAL_OPACITY(Code.snomed("64634000", "Corneal opacity")),
  CORNEAL_EPITHELIAL_DEFECT("Epithelial defect of the cornea"),
  ANTERIOR_CHAMBER_CELLS("Cells in the anterior chamber"),
  ANTERIOR_CHAMBER_FLARE("Flare in the anterior chamber"),
  SHALLOW_ANTERIOR_CHAMBER("Shallow anterior chamber"),
  HYPHAEMA(Code.snomed("75229002", "Hyphema")),
  HYPOPYON(Code.snomed("87807004", "Hypopyon")),
  IRIS_NEW_VESSELS(Code.snomed("51995000", "Rubeosis iridis")),
  POSTERIOR_SYNECHIAE("Iris adhering to the lens"),
  LENS_OPACITY("Opacity of the lens"),
  ARTIFICIAL_LENS(Code.snomed("95217000", "Pseudophakia")),
  NO_LENS(Code.snomed("24010005", "Aphakia"));

  private final Code code;

  AnteriorSign(String display) {
    this.code = Concept.local(this, display);
  }

  AnteriorSign(Code code) {
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
