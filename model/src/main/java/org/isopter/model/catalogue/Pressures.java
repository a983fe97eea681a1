package org.isopter.model.catalogue;

import java.util.List;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
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

  /**
   * A pressure that the instrument could not show.
   *
   * @param limit the end of its scale
   * @param beyond on which side of it the pressure lies
   */
  public record Beyond(Quantity limit, Term beyond) {

    /** Says whether the pressure is higher than the limit, by however much. */
    public boolean isAbove() {
      return beyond.word().equals("above");
    }
  }

  private static final Part<Beyond, Term> SIDE =
      Part.required(
          "beyond-limit",
          "Side of the limit",
          Shapes.oneOfWords("beyond-limit", "above", "below"),
          Beyond::beyond);

  /** A pressure above or below what could be measured; it is no reading. */
  public static final Finding<Beyond> BEYOND =
      ENTRIES.add(
          Finding.of("pressure-beyond-scale", "Intraocular pressure beyond the scale")
              .value(
                  Layout.of(
                      Shapes.measure(Unit.MM_HG, "1", "120", 1),
                      Beyond::limit,
                      List.of(SIDE),
                      (limit, parts) -> new Beyond(limit, parts.get(SIDE))))
              .by(Tonometry.class)
              .cite("common practice, no source")
              .note("The number is a limit and never the pressure itself.")
              .build());

  private Pressures() {}
}
