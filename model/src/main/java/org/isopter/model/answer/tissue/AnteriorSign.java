package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sign in the front of the eye. */
public enum AnteriorSign implements Concept {
  CONJUNCTIVAL_REDNESS("Redness of the conjunctiva"),
  CORNEAL_OEDEMA("Oedema of the cornea"),
  CORNEAL_OPACITY("Opacity of the cornea"),
  CORNEAL_EPITHELIAL_DEFECT("Epithelial defect of the cornea"),
  ANTERIOR_CHAMBER_CELLS("Cells in the anterior chamber"),
  ANTERIOR_CHAMBER_FLARE("Flare in the anterior chamber"),
  SHALLOW_ANTERIOR_CHAMBER("Shallow anterior chamber"),
  HYPHAEMA("Blood in the anterior chamber"),
  HYPOPYON("Pus in the anterior chamber"),
  IRIS_NEW_VESSELS("New vessels of the iris"),
  POSTERIOR_SYNECHIAE("Iris adhering to the lens"),
  LENS_OPACITY("Opacity of the lens"),
  ARTIFICIAL_LENS("Artificial lens"),
  NO_LENS("No lens");

  private final Code code;

  AnteriorSign(String display) {
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
