package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.Sweating;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.When;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The lids, and sweating of the face beside them. */
public final class Lids {

  static final Entries ENTRIES = new Entries();

  /**
   * Drooping of an upper lid.
   *
   * @param presence whether it droops
   * @param amount by how much, when measured
   */
  public record Ptosis(Presence presence, Optional<Quantity> amount) {}

  private static final Part<Ptosis, Quantity> AMOUNT =
      Part.optional(
          "ptosis-amount",
          "Amount of ptosis",
          Shapes.measure(Unit.MILLIMETRE, "0.5", "12", 1),
          Ptosis::amount);

  /** The distance from the corneal light reflex to the margin of the upper lid. */
  public static final Finding<Quantity> MARGIN_REFLEX =
      ENTRIES.add(
          Finding.of("margin-reflex-distance", "Margin reflex distance 1 of the upper lid")
              .value(Shapes.measure(Unit.MILLIMETRE, "-10", "10", 1))
              .cite("data-entry limits: common practice, no source; negative is legal")
              .note("Negative where the lid margin lies below the reflex.")
              .build());

  /** The height of the palpebral fissure. */
  public static final Finding<Quantity> FISSURE =
      ENTRIES.add(
          Finding.of("palpebral-fissure", "Height of the palpebral fissure")
              .sided(
                  Code.loinc("79855-3", "Right palpebral fissure Opening height"),
                  Code.loinc("79856-1", "Left palpebral fissure Opening height"))
              .value(Shapes.measure(Unit.MILLIMETRE, "0", "20", 1))
              .cite("data-entry limits: common practice, no source")
              .build());

  /** Drooping of the upper lid. */
  public static final Finding<Ptosis> PTOSIS =
      ENTRIES.add(
          Finding.of("ptosis", "Ptosis of the upper lid")
              .codeWhen(
                  new When.Value(List.of(Presence.PRESENT)),
                  Code.snomed("11934000", "Ptosis of eyelid (disorder)"))
              .value(
                  Layout.of(
                          Shapes.oneOf(Presence.class),
                          Ptosis::presence,
                          List.of(AMOUNT),
                          (presence, parts) -> new Ptosis(presence, parts.find(AMOUNT)))
                      .rules(new Rule.OnlyWith("ptosis-amount", Set.of(Presence.PRESENT))))
              .cite("common practice, no source")
              .build());

  /** The travel of the upper lid from down gaze to up gaze. */
  public static final Finding<Quantity> LEVATOR =
      ENTRIES.add(
          Finding.of("levator-function", "Levator function")
              .value(Shapes.measure(Unit.MILLIMETRE, "0", "25", 1))
              .cite("data-entry limits: common practice, no source; cut-offs disagree")
              .build());

  /** Sweating of the face on the side of the eye. */
  public static final Finding<Sweating> SWEATING =
      ENTRIES.add(
          Finding.of("facial-sweating", "Sweating of the face on the side of the eye")
              .value(Shapes.oneOf(Sweating.class))
              .cite("common practice, no source")
              .build());

  private Lids() {}
}
