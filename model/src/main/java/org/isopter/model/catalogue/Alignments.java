package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.movement.Alignment;
import org.isopter.model.answer.movement.CoverMethod;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** The position of the eyes: in the orbit, and to each other. */
public final class Alignments {

  static final Entries ENTRIES = new Entries();

  /**
   * A deviation of the eyes.
   *
   * @param alignment how the eyes stand to each other
   * @param control whether it is held back, when stated
   * @param amount its size in prism dioptres, when measured
   * @param fixation how far away the person looked, when stated
   */
  public record Deviation(
      Alignment alignment,
      Optional<Control> control,
      Optional<Quantity> amount,
      Optional<FixationDistance> fixation) {}

  /**
   * How far an eye stands forward.
   *
   * @param protrusion from the orbital rim to the top of the cornea, in mm
   * @param base the distance between the rims on the instrument, in mm, when stated
   */
  public record Protrusion(Quantity protrusion, Optional<Quantity> base) {}

  private static final Set<Alignment> DEVIATING =
      Set.of(Alignment.ESO, Alignment.EXO, Alignment.RIGHT_HYPER, Alignment.LEFT_HYPER);

  private static final Part<Deviation, Control> CONTROL =
      Part.optional("control", "Control", Shapes.oneOf(Control.class), Deviation::control);

  private static final Part<Deviation, Quantity> AMOUNT =
      Part.optional(
          "deviation-amount",
          "Size of the deviation",
          Shapes.measure(Unit.PRISM_DIOPTRE, "0.5", "100", 1),
          Deviation::amount);

  private static final Part<Deviation, FixationDistance> FIXATION =
      Part.optional(
          "fixation", "Fixation", Shapes.oneOf(FixationDistance.class), Deviation::fixation);

  private static final Part<Protrusion, Quantity> RIM_DISTANCE =
      Part.optional(
          "rim-distance",
          "Distance between the orbital rims",
          Shapes.measure(Unit.MILLIMETRE, "70", "130", 0),
          Protrusion::base);

  /** The deviation of the eyes on covering one. */
  public static final Finding<Deviation> DEVIATION =
      ENTRIES.add(
          Finding.of("ocular-deviation", "Deviation of the eyes")
              .code(Code.snomed("313088003", "Ocular muscle balance (observable entity)"))
              .value(
                  Layout.of(
                          Shapes.oneOf(Alignment.class),
                          Deviation::alignment,
                          List.of(CONTROL, AMOUNT, FIXATION),
                          (alignment, parts) ->
                              new Deviation(
                                  alignment,
                                  parts.find(CONTROL),
                                  parts.find(AMOUNT),
                                  parts.find(FIXATION)))
                      .rules(
                          new Rule.OnlyWith("control", DEVIATING),
                          new Rule.OnlyWith("deviation-amount", DEVIATING)))
              .at(Site.PAIR)
              .by(CoverMethod.class)
              .distinguishedBy(FIXATION)
              .cite("common practice, no source")
              .note("A horizontal and a vertical part are two entries.")
              .build());

  /** How far each eye stands forward. */
  public static final Finding<Protrusion> PROTRUSION =
      ENTRIES.add(
          Finding.of("eye-protrusion", "Exophthalmometry")
              .sided(
                  Code.loinc("28998-3", "Right eye Exopthalmia Exopthalmometer.Hertel"),
                  Code.loinc("28999-1", "Left eye Exopthalmia Exopthalmometer.Hertel"))
              .code(
                  Code.snomed(
                      "424391002", "Hertel exophthalmometry measurement (observable entity)"))
              .value(
                  Layout.of(
                      Shapes.measure(Unit.MILLIMETRE, "5", "35", 1),
                      Protrusion::protrusion,
                      List.of(RIM_DISTANCE),
                      (mm, parts) -> new Protrusion(mm, parts.find(RIM_DISTANCE))))
              .cite("data-entry limits 5 to 35 mm: common practice, no source")
              .note("By the Hertel instrument; compare only readings of one rim distance.")
              .build());

  /** The nearest point that both eyes can be turned to. */
  public static final Finding<Quantity> CONVERGENCE =
      ENTRIES.add(
          Finding.of("convergence-near-point", "Near point of convergence")
              .value(Shapes.measure(Unit.CENTIMETRE, "0", "100", 1))
              .at(Site.PAIR)
              .cite("data-entry limits 0 to 100 cm: common practice, no source")
              .note("From the root of the nose, or as the examiner measures.")
              .build());

  /** How the head is held. */
  public static final Finding<Term> HEAD_POSTURE =
      ENTRIES.add(
          Finding.of("head-posture", "Head posture")
              .value(
                  Shapes.oneOfWords(
                      "head-posture",
                      "straight",
                      "turned-to-right",
                      "turned-to-left",
                      "tilted-to-right",
                      "tilted-to-left",
                      "chin-up",
                      "chin-down"))
              .at(Site.PAIR)
              .cite("common practice, no source")
              .note("The sides are the person's own; a turn and a tilt are two entries.")
              .build());

  private Alignments() {}
}
