package org.isopter.model.catalogue;

import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The pressure in the eye. */
public final class Pressures {

  static final Entries ENTRIES = new Entries();

  /** The intraocular pressure. */
  public static final Finding<Quantity> INTRAOCULAR =
      ENTRIES.add(
          Finding.of("intraocular-pressure", "Intraocular pressure")
              .sided(
                  Code.loinc("79892-6", "Right eye Intraocular pressure"),
                  Code.loinc("79893-4", "Left eye Intraocular pressure"))
              .code(Code.snomed("41633001", "Intraocular pressure (observable entity)"))
              .value(Shapes.measure(Unit.MM_HG, "0", "80", 3))
              .by(Tonometry.class)
              .cite("data-entry limits 0 to 80 mmHg: common practice, no source")
              .note(
                  "As read; never corrected for corneal thickness. It varies with method and time.")
              .build());

  private Pressures() {}
}
