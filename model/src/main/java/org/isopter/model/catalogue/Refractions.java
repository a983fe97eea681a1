package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.movement.HorizontalBase;
import org.isopter.model.answer.movement.VerticalBase;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Values;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Refraction: what lenses the eye needs, as measured; not an order for glasses. */
public final class Refractions {

  static final Entries ENTRIES = new Entries();

  /**
   * A refraction in spherocylindrical form.
   *
   * @param sphere the power of the sphere in dioptres
   * @param cylinder the cylinder and its axis; empty for a sphere alone
   * @param addition the reading addition, when given
   * @param horizontal the horizontal prism, when given
   * @param vertical the vertical prism, when given
   * @param vertex the distance from lens to cornea, when stated
   * @param cycloplegic whether the ciliary muscle was paralysed, when stated
   */
  public record Refraction(
      Quantity sphere,
      Optional<Cylinder> cylinder,
      Optional<Quantity> addition,
      Optional<Prism<HorizontalBase>> horizontal,
      Optional<Prism<VerticalBase>> vertical,
      Optional<Quantity> vertex,
      Optional<Boolean> cycloplegic) {}

  /**
   * A cylinder.
   *
   * @param power its power in dioptres, of either sign
   * @param axis its axis in whole degrees, 1 to 180; horizontal is 180, never 0
   */
  public record Cylinder(Quantity power, Quantity axis) {}

  /**
   * A prism.
   *
   * @param amount its strength in prism dioptres
   * @param base where its base points
   * @param <B> the directions it may point in
   */
  public record Prism<B>(Quantity amount, B base) {}

  private static final Part<Refraction, Quantity> SPHERE =
      Part.<Refraction, Quantity>required(
              "sphere", "Sphere", dioptres("-40", "30"), Refraction::sphere)
          .coded(Code.snomed("251795007", "Power of sphere (observable entity)"));

  private static final Part<Refraction, Quantity> CYLINDER =
      Part.<Refraction, Quantity>optional(
              "cylinder", "Cylinder", dioptres("-15", "15"), r -> r.cylinder().map(Cylinder::power))
          .coded(Code.snomed("251797004", "Power of cylinder (observable entity)"));

  private static final Part<Refraction, Quantity> AXIS =
      Part.<Refraction, Quantity>optional(
              "axis",
              "Axis",
              Shapes.measure(Unit.DEGREE, "1", "180", 0),
              r -> r.cylinder().map(Cylinder::axis))
          .coded(Code.snomed("251799001", "Axis of cylinder (observable entity)"));

  private static final Part<Refraction, Quantity> ADDITION =
      Part.<Refraction, Quantity>optional(
              "addition", "Reading addition", dioptres("0.25", "12"), Refraction::addition)
          .coded(Code.snomed("397282003", "Reading addition power (observable entity)"));

  private static final Part<Refraction, Quantity> HORIZONTAL =
      Part.optional(
          "horizontal-prism", "Horizontal prism", prism(), r -> r.horizontal().map(Prism::amount));

  private static final Part<Refraction, HorizontalBase> HORIZONTAL_BASE =
      Part.optional(
          "horizontal-base",
          "Base of the horizontal prism",
          Shapes.oneOf(HorizontalBase.class),
          r -> r.horizontal().map(Prism::base));

  private static final Part<Refraction, Quantity> VERTICAL =
      Part.optional(
          "vertical-prism", "Vertical prism", prism(), r -> r.vertical().map(Prism::amount));

  private static final Part<Refraction, VerticalBase> VERTICAL_BASE =
      Part.optional(
          "vertical-base",
          "Base of the vertical prism",
          Shapes.oneOf(VerticalBase.class),
          r -> r.vertical().map(Prism::base));

  private static final Part<Refraction, Quantity> VERTEX =
      Part.optional(
          "vertex-distance",
          "Vertex distance",
          Shapes.measure(Unit.MILLIMETRE, "0", "25", 1),
          Refraction::vertex);

  private static final Part<Refraction, Boolean> CYCLOPLEGIC =
      Part.optional("cycloplegic", "Under cycloplegia", Shapes.truth(), Refraction::cycloplegic);

  /** The refraction of an eye. */
  public static final Finding<Refraction> REFRACTION =
      ENTRIES.add(
          Finding.of("refraction", "Refraction")
              .value(
                  Layout.ofParts(
                          List.of(
                              SPHERE,
                              CYLINDER,
                              AXIS,
                              ADDITION,
                              HORIZONTAL,
                              HORIZONTAL_BASE,
                              VERTICAL,
                              VERTICAL_BASE,
                              VERTEX,
                              CYCLOPLEGIC),
                          Refractions::refraction)
                      .rules(
                          new Rule.Together("cylinder", "axis"),
                          new Rule.Together("horizontal-prism", "horizontal-base"),
                          new Rule.Together("vertical-prism", "vertical-base")))
              .by(RefractionMethod.class)
              .distinguishedBy(CYCLOPLEGIC)
              .cite("data-entry limits: common practice, no source; prism steps: DICOM PS3.17 RR.1")
              .note("Leave the cylinder out when there is none; an axis of 0 is written 180.")
              .build());

  private Refractions() {}

  private static Shape<Quantity> dioptres(String least, String most) {
    return Shapes.measure(Unit.DIOPTRE, least, most, 3);
  }

  private static Shape<Quantity> prism() {
    return Shapes.measure(Unit.PRISM_DIOPTRE, "0.25", "100", 2);
  }

  private static Refraction refraction(Values values) {
    return new Refraction(
        values.get(SPHERE),
        values.find(CYLINDER).map(power -> new Cylinder(power, values.get(AXIS))),
        values.find(ADDITION),
        values.find(HORIZONTAL).map(amount -> new Prism<>(amount, values.get(HORIZONTAL_BASE))),
        values.find(VERTICAL).map(amount -> new Prism<>(amount, values.get(VERTICAL_BASE))),
        values.find(VERTEX),
        values.find(CYCLOPLEGIC));
  }
}
