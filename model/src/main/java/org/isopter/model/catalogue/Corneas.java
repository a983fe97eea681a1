package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The curvature and the thickness of the cornea. */
public final class Corneas {

  static final Entries ENTRIES = new Entries();

  /**
   * The refracting power of the cornea in its two main meridians.
   *
   * @param flat the power of the flatter meridian, in dioptres
   * @param steep the power of the steeper meridian, in dioptres
   * @param steepAxis the direction of the steeper meridian in whole degrees, when stated
   */
  public record Curvature(Quantity flat, Quantity steep, Optional<Quantity> steepAxis) {}

  private static final Part<Curvature, Quantity> FLAT =
      Part.required("flat-power", "Power of the flatter meridian", power(), Curvature::flat);

  private static final Part<Curvature, Quantity> STEEP =
      Part.required("steep-power", "Power of the steeper meridian", power(), Curvature::steep);

  private static final Part<Curvature, Quantity> STEEP_AXIS =
      Part.optional(
          "steep-axis",
          "Direction of the steeper meridian",
          Shapes.measure(Unit.DEGREE, "1", "180", 0),
          Curvature::steepAxis);

  /** The curvature of the cornea. */
  public static final Finding<Curvature> CURVATURE =
      ENTRIES.add(
          Finding.of("corneal-curvature", "Curvature of the cornea by keratometry")
              .value(
                  Layout.ofParts(
                      List.of(FLAT, STEEP, STEEP_AXIS),
                      parts ->
                          new Curvature(parts.get(FLAT), parts.get(STEEP), parts.find(STEEP_AXIS))))
              .cite("data-entry limits: common practice, no source")
              .build());

  /** The thickness of the centre of the cornea. */
  public static final Finding<Quantity> THICKNESS =
      ENTRIES.add(
          Finding.of("central-corneal-thickness", "Central corneal thickness")
              .sided(
                  Site.LEFT,
                  Code.loinc("79826-4", "Left cornea Central corneal thickness Pachymetry"))
              .value(Shapes.measure(Unit.MICROMETRE, "300", "800", 0))
              .cite("data-entry limits 300 to 800 um: common practice, no source")
              .note("Kept beside the pressure; no pressure is corrected by it.")
              .build());

  private Corneas() {}

  private static Shape<Quantity> power() {
    return Shapes.measure(Unit.DIOPTRE, "20", "80", 2);
  }
}
