package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.pupil.PupilOutline;
import org.isopter.model.answer.pupil.PupilResponse;
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

/** Size, shape and responses of the pupils, and the relative afferent defect. */
public final class Pupils {

  static final Entries ENTRIES = new Entries();

  /**
   * The size of a pupil in a light.
   *
   * @param diameter the diameter in mm
   * @param lighting the light it was measured in
   */
  public record Size(Quantity diameter, Lighting lighting) {}

  /**
   * A relative afferent defect.
   *
   * @param side the eye that answers less, or none
   * @param grade the clinical grade, when given
   * @param logUnits the neutral density that balances the eyes, in log units, when measured
   */
  public record AfferentDefect(
      DefectSide side, Optional<DefectGrade> grade, Optional<BigDecimal> logUnits) {

    /** Returns a defect of which only the side is stated. */
    public static AfferentDefect of(DefectSide side) {
      return new AfferentDefect(side, Optional.empty(), Optional.empty());
    }
  }

  private static final Part<Size, Lighting> LIGHTING =
      Part.required("lighting", "Lighting", Shapes.oneOf(Lighting.class), Size::lighting);

  private static final Part<AfferentDefect, DefectGrade> GRADE =
      Part.optional(
          "defect-grade",
          "Clinical grade of the defect",
          Shapes.oneOf(DefectGrade.class),
          AfferentDefect::grade);

  private static final Part<AfferentDefect, BigDecimal> LOG_UNITS =
      Part.optional(
          "log-units",
          "Neutral density that balances the eyes",
          Shapes.number(Unit.LOG_UNIT, "0.1", "4", 2),
          AfferentDefect::logUnits);

  /** The size of a pupil. */
  public static final Finding<Size> SIZE =
      ENTRIES.add(
          Finding.of("pupil-size", "Size of pupil")
              .code(Code.snomed("363953003", "Size of pupil (observable entity)"))
              .value(
                  Layout.of(
                      Shapes.measure(Unit.MILLIMETRE, "0.5", "10", 1),
                      Size::diameter,
                      List.of(LIGHTING),
                      (diameter, parts) -> new Size(diameter, parts.get(LIGHTING))))
              .distinguishedBy(LIGHTING)
              .cite("data-entry limits 0.5 to 10 mm: common practice, no source")
              .build());

  /** Whether the pupils are of one size, a comparison of the two eyes. */
  public static final Finding<PupilEquality> EQUALITY =
      ENTRIES.add(
          Finding.of("pupil-equality", "Equality of pupils")
              .code(Code.snomed("363955005", "Equality of pupils (observable entity)"))
              .value(Shapes.oneOf(PupilEquality.class))
              .at(Site.PAIR)
              .cite("common practice, no source")
              .note("As judged by eye, in the light of the room; measured sizes say more.")
              .build());

  /** The outline of a pupil. */
  public static final Finding<PupilOutline> OUTLINE =
      ENTRIES.add(
          Finding.of("pupil-outline", "Pupil shape")
              .sided(Site.RIGHT, Code.loinc("80312-2", "Pupil shape [Shape] of Right pupil"))
              .code(Code.snomed("363954009", "Pupil shape (observable entity)"))
              .value(Shapes.oneOf(PupilOutline.class))
              .cite("common practice, no source")
              .build());

  /** The answer of a pupil to light in the same eye. */
  public static final Finding<PupilResponse> DIRECT =
      ENTRIES.add(
          Finding.of("direct-light-response", "Direct pupil response to light")
              .sided(
                  Code.loinc("79815-7", "Right pupil Pupillary response"),
                  Code.loinc("79899-1", "Left pupil Pupillary response"))
              .code(Code.snomed("113147002", "Pupil reaction to light (observable entity)"))
              .value(Shapes.oneOf(PupilResponse.class))
              .cite("common practice, no source")
              .note("The eye is the one that is lit and watched.")
              .build());

  /** The answer of a pupil to light in the fellow eye. */
  public static final Finding<PupilResponse> CONSENSUAL =
      ENTRIES.add(
          Finding.of("consensual-light-response", "Consensual pupil response to light")
              .code(Code.snomed("84917001", "Indirect light pupillary reflex (observable entity)"))
              .value(Shapes.oneOf(PupilResponse.class))
              .cite("common practice, no source")
              .note("The eye is the one that is watched while its fellow is lit.")
              .build());

  /** The answer of a pupil to a near target. */
  public static final Finding<PupilResponse> NEAR =
      ENTRIES.add(
          Finding.of("near-response", "Pupil response to a near target")
              .value(Shapes.oneOf(PupilResponse.class))
              .cite("common practice, no source")
              .build());

  /** The relative afferent defect, a comparison of the two eyes. */
  public static final Finding<AfferentDefect> AFFERENT_DEFECT =
      ENTRIES.add(
          Finding.of("afferent-defect", "Relative afferent pupillary defect")
              .codeWhen(
                  new When.Value(List.of(DefectSide.RIGHT, DefectSide.LEFT)),
                  Code.snomed("232121005", "Afferent pupillary defect (disorder)"))
              .code(Code.loinc("106805-5", "Eye Pupillary response Swinging light test"))
              .value(
                  Layout.of(
                          Shapes.oneOf(DefectSide.class),
                          AfferentDefect::side,
                          List.of(GRADE, LOG_UNITS),
                          (side, parts) ->
                              new AfferentDefect(side, parts.find(GRADE), parts.find(LOG_UNITS)))
                      .rules(
                          new Rule.OnlyWith(
                              "defect-grade", Set.of(DefectSide.RIGHT, DefectSide.LEFT)),
                          new Rule.OnlyWith(
                              "log-units", Set.of(DefectSide.RIGHT, DefectSide.LEFT))))
              .at(Site.PAIR)
              .cite(
                  "Yotharak and Aui-Aree 2012, J Med Assoc Thai 95(4): grade and log units differ")
              .note("It compares the eyes, so it is never in both; grade and log units stay apart.")
              .build());

  private Pupils() {}
}
