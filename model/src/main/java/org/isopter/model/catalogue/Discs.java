package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.tissue.DiscColour;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.DiscSector;
import org.isopter.model.answer.tissue.DiscSign;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.When;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The optic disc. */
public final class Discs {

  static final Entries ENTRIES = new Entries();

  /**
   * The colour of a disc.
   *
   * @param colour the colour
   * @param sector where it is pale, when only a sector is and it is stated
   */
  public record Colour(DiscColour colour, Optional<DiscSector> sector) {

    /** Returns a colour of which no sector is stated. */
    public static Colour of(DiscColour colour) {
      return new Colour(colour, Optional.empty());
    }
  }

  /**
   * Swelling of a disc.
   *
   * @param presence whether it is swollen
   * @param frisen the grade of papilloedema, 0 to 5, where the scale applies and was used
   */
  public record Swelling(Presence presence, Optional<Integer> frisen) {}

  /**
   * Haemorrhage on or beside a disc.
   *
   * @param presence whether there is one
   * @param clockHour where it lies, 1 to 12 as the examiner faces the eye, when stated
   */
  public record Haemorrhage(Presence presence, Optional<Integer> clockHour) {}

  /**
   * A sign of a disc, and whether it is there; what is not listed was not looked for.
   *
   * @param sign the sign
   * @param presence whether it is there
   */
  public record Sign(DiscSign sign, Presence presence) {}

  private static final Part<Sign, DiscSign> SIGN_KIND =
      Part.required("disc-sign", "Sign of the disc", Shapes.oneOf(DiscSign.class), Sign::sign);

  private static final Part<Sign, Presence> SIGN_PRESENCE =
      Part.required("presence", "Presence", Shapes.oneOf(Presence.class), Sign::presence);

  private static final Part<Colour, DiscSector> SECTOR =
      Part.optional(
          "disc-sector", "Sector of the disc", Shapes.oneOf(DiscSector.class), Colour::sector);

  private static final Part<Swelling, Integer> FRISEN =
      Part.optional(
          "frisen-grade", "Frisen grade of papilloedema", Shapes.count(0, 5), Swelling::frisen);

  private static final Part<Haemorrhage, Integer> CLOCK_HOUR =
      Part.optional("clock-hour", "Clock hour", Shapes.count(1, 12), Haemorrhage::clockHour);

  /**
   * A ratio read off a photograph, or by a technique that is not stated, is not "by
   * ophthalmoscopy".
   */
  private static final When LOOKED_AT =
      new When.Method(
          List.of(
              FundusMethod.DIRECT_OPHTHALMOSCOPY,
              FundusMethod.INDIRECT_OPHTHALMOSCOPY,
              FundusMethod.BINOCULAR_INDIRECT_OPHTHALMOSCOPY));

  /** The vertical cup-disc ratio. */
  public static final Finding<BigDecimal> VERTICAL_CUP =
      ENTRIES.add(
          Finding.of("vertical-cup-disc-ratio", "Vertical cup-disc ratio")
              .sidedWhen(
                  LOOKED_AT,
                  new EnumMap<>(
                      Map.of(
                          Site.RIGHT,
                          Code.loinc(
                              "71485-7", "Right optic nerve Cup-disc ratio by Ophthalmoscopy"),
                          Site.LEFT,
                          Code.loinc(
                              "71484-0", "Left optic nerve Cup-disc ratio by Ophthalmoscopy"))))
              .code(Code.snomed("370937003", "Vertical cup disc ratio (observable entity)"))
              .value(Shapes.number(Unit.ONE, "0", "1", 2))
              .by(FundusMethod.class)
              .cite("Crowston 2004, BJO 88:766: normal limits depend on the size of the disc")
              .build());

  /** The horizontal cup-disc ratio. */
  public static final Finding<BigDecimal> HORIZONTAL_CUP =
      ENTRIES.add(
          Finding.of("horizontal-cup-disc-ratio", "Horizontal cup-disc ratio")
              .code(Code.snomed("370938008", "Horizontal cup disc ratio (observable entity)"))
              .value(Shapes.number(Unit.ONE, "0", "1", 2))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .build());

  /** A cup-disc ratio of which nobody said along which line. */
  public static final Finding<BigDecimal> UNDIRECTED_CUP =
      ENTRIES.add(
          Finding.of("cup-disc-ratio", "Cup-disc ratio of no stated direction")
              .value(Shapes.number(Unit.ONE, "0", "1", 2))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .note("It is compared with no limit, for the limits are those of the vertical one.")
              .build());

  /** The vertical diameter of the disc, without which a cup-disc ratio says little. */
  public static final Finding<Quantity> DIAMETER =
      ENTRIES.add(
          Finding.of("vertical-disc-diameter", "Vertical diameter of the optic disc")
              .value(Shapes.measure(Unit.MILLIMETRE, "0.5", "4", 2))
              .by(FundusMethod.class)
              .cite("data-entry limits: common practice, no source")
              .note("Corrected for the lens it was measured through.")
              .build());

  /** The margin of the disc. */
  public static final Finding<DiscMargin> MARGIN =
      ENTRIES.add(
          Finding.of("disc-margin", "Margin of the optic disc")
              .value(Shapes.oneOf(DiscMargin.class))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .build());

  /** The colour of the disc. */
  public static final Finding<Colour> COLOUR =
      ENTRIES.add(
          Finding.of("disc-colour", "Colour of the optic disc")
              .value(
                  Layout.of(
                          Shapes.oneOf(DiscColour.class),
                          Colour::colour,
                          List.of(SECTOR),
                          (colour, parts) -> new Colour(colour, parts.find(SECTOR)))
                      .rules(new Rule.OnlyWith("disc-sector", Set.of(DiscColour.SECTOR_PALLOR))))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .build());

  /** Swelling of the disc. */
  public static final Finding<Swelling> SWELLING =
      ENTRIES.add(
          Finding.of("disc-swelling", "Swelling of the optic disc")
              .codeWhen(
                  new When.Value(List.of(Presence.PRESENT)),
                  Code.snomed("248487006", "Optic disc swelling (finding)"))
              .value(
                  Layout.of(
                      Shapes.oneOf(Presence.class),
                      Swelling::presence,
                      List.of(FRISEN),
                      (presence, parts) -> new Swelling(presence, parts.find(FRISEN))))
              .by(FundusMethod.class)
              .cite("modified Frisen scale: Neuro-Ophthalmology 2023;47:177")
              .note("The grade is for papilloedema only; swelling of other cause has none.")
              .build());

  /** Haemorrhage on or beside the disc. */
  public static final Finding<Haemorrhage> HAEMORRHAGE =
      ENTRIES.add(
          Finding.of("disc-haemorrhage", "Haemorrhage of the optic disc")
              .value(
                  Layout.of(
                          Shapes.oneOf(Presence.class),
                          Haemorrhage::presence,
                          List.of(CLOCK_HOUR),
                          (presence, parts) -> new Haemorrhage(presence, parts.find(CLOCK_HOUR)))
                      .rules(new Rule.OnlyWith("clock-hour", Set.of(Presence.PRESENT))))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .build());

  /** Spontaneous venous pulsation on the disc. */
  public static final Finding<Presence> VENOUS_PULSATION =
      ENTRIES.add(
          Finding.of("venous-pulsation", "Spontaneous venous pulsation of the optic disc")
              .code(Code.snomed("247230002", "Optic disc spontaneous venous pulsation"))
              .value(Shapes.oneOf(Presence.class))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .note("Its absence alone means nothing.")
              .build());

  /** A sign of the disc. */
  public static final Finding<Sign> SIGN =
      ENTRIES.add(
          Finding.of("disc-sign", "Sign of the optic disc")
              .value(
                  Layout.ofParts(
                      List.of(SIGN_KIND, SIGN_PRESENCE),
                      parts -> new Sign(parts.get(SIGN_KIND), parts.get(SIGN_PRESENCE))))
              .by(FundusMethod.class)
              .distinguishedBy(SIGN_KIND)
              .cite("common practice, no source")
              .note("One entry for each sign that was looked for.")
              .build());

  private Discs() {}
}
