package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.AfferentTest;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.pupil.PupilFeature;
import org.isopter.model.answer.pupil.PupilOutline;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.When;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
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
   * @param side the eye that answers less, or none, or that it could not be decided
   * @param grade the clinical grade, when given
   * @param logUnits the neutral density that balances the eyes, in log units, when measured
   * @param suspected the eye that is suspected where it could not be decided, when stated
   */
  public record AfferentDefect(
      DefectSide side,
      Optional<DefectGrade> grade,
      Optional<BigDecimal> logUnits,
      Optional<Term> suspected) {

    /** Makes a defect that was decided. */
    public AfferentDefect(
        DefectSide side, Optional<DefectGrade> grade, Optional<BigDecimal> logUnits) {
      this(side, grade, logUnits, Optional.empty());
    }

    /** Returns a defect of which only the side is stated. */
    public static AfferentDefect of(DefectSide side) {
      return new AfferentDefect(side, Optional.empty(), Optional.empty());
    }
  }

  /**
   * A feature of a pupil, and whether it is there; what is not listed was not looked for.
   *
   * @param feature the feature
   * @param presence whether it is there
   */
  public record Feature(PupilFeature feature, Presence presence) {}

  private static final Term SUSPECTED_RIGHT =
      new Term("right", Code.local("suspected-eye", "right", "Right"));

  private static final Term SUSPECTED_LEFT =
      new Term("left", Code.local("suspected-eye", "left", "Left"));

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

  private static final Part<AfferentDefect, Term> SUSPECTED =
      Part.optional(
          "suspected-eye",
          "Suspected eye",
          Shapes.oneOf(
              Answers.of("suspected-eye", List.of(SUSPECTED_RIGHT, SUSPECTED_LEFT)), Term.class),
          AfferentDefect::suspected);

  private static final Part<Feature, PupilFeature> FEATURE_KIND =
      Part.required("pupil-feature", "Feature", Shapes.oneOf(PupilFeature.class), Feature::feature);

  private static final Part<Feature, Presence> FEATURE_PRESENCE =
      Part.required("presence", "Presence", Shapes.oneOf(Presence.class), Feature::presence);

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
                          List.of(GRADE, LOG_UNITS, SUSPECTED),
                          (side, parts) ->
                              new AfferentDefect(
                                  side,
                                  parts.find(GRADE),
                                  parts.find(LOG_UNITS),
                                  parts.find(SUSPECTED)))
                      .rules(
                          new Rule.OnlyWith(
                              "defect-grade", Set.of(DefectSide.RIGHT, DefectSide.LEFT)),
                          new Rule.OnlyWith("log-units", Set.of(DefectSide.RIGHT, DefectSide.LEFT)),
                          new Rule.OnlyWith("suspected-eye", Set.of(DefectSide.EQUIVOCAL))))
              .at(Site.PAIR)
              .by(AfferentTest.class)
              .cite(
                  "Yotharak and Aui-Aree 2012, J Med Assoc Thai 95(4): grade and log units differ")
              .note("It compares the eyes, so it is never in both; grade and log units stay apart.")
              .build());

  /** What a pupil does or looks like besides. */
  public static final Finding<Feature> FEATURE =
      ENTRIES.add(
          Finding.of("pupil-feature", "Feature of the pupil")
              .value(
                  Layout.ofParts(
                      List.of(FEATURE_KIND, FEATURE_PRESENCE),
                      parts -> new Feature(parts.get(FEATURE_KIND), parts.get(FEATURE_PRESENCE))))
              .distinguishedBy(FEATURE_KIND)
              .cite("common practice, no source")
              .note("One entry for each feature that was looked for.")
              .build());

  /** Returns the findings of the pupils; drops that widen them change all of these. */
  public static List<Finding<?>> all() {
    return ENTRIES.all();
  }

  /** Returns the word by which a defect that could not be decided names the suspected eye. */
  public static Optional<Term> suspectedEye(Site eye) {
    return switch (eye) {
      case RIGHT -> Optional.of(SUSPECTED_RIGHT);
      case LEFT -> Optional.of(SUSPECTED_LEFT);
      case BOTH -> Optional.empty();
    };
  }

  private Pupils() {}
}
