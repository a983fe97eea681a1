package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.answer.sight.ComparedQuality;
import org.isopter.model.answer.sight.MeridianDifference;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Colour plates and the comparison of a red target between the eyes. */
public final class Colours {

  static final Entries ENTRIES = new Entries();

  /**
   * The result of a set of colour plates.
   *
   * @param correct the plates read correctly
   * @param shown the plates shown
   * @param test the set of plates
   * @param edition the number of plates in the edition, when stated
   * @param control whether the plate that everybody reads was read, when stated
   */
  public record Plates(
      int correct,
      int shown,
      ColourTest test,
      Optional<Integer> edition,
      Optional<Boolean> control) {

    /** Makes a result that does not say whether the control plate was read. */
    public Plates(int correct, int shown, ColourTest test, Optional<Integer> edition) {
      this(correct, shown, test, edition, Optional.empty());
    }
  }

  /**
   * A target carried across the vertical meridian of one eye.
   *
   * @param difference in which half it looks weaker
   * @param quality what of it was compared
   */
  public record AcrossMeridian(MeridianDifference difference, ComparedQuality quality) {}

  private static final Part<Plates, ColourTest> TEST =
      Part.required("plate-test", "Set of plates", Shapes.oneOf(ColourTest.class), Plates::test);

  private static final Part<Plates, Integer> EDITION =
      Part.optional("edition", "Plates in the edition", Shapes.count(4, 60), Plates::edition);

  private static final Part<Plates, Boolean> CONTROL =
      Part.optional("control-plate", "Control plate read", Shapes.truth(), Plates::control);

  private static final Part<AcrossMeridian, ComparedQuality> QUALITY =
      Part.required(
          "compared",
          "What is compared",
          Shapes.oneOf(ComparedQuality.class),
          AcrossMeridian::quality);

  /** The plates read correctly out of those shown. */
  public static final Finding<Plates> PLATES =
      ENTRIES.add(
          Finding.of("colour-plates", "Colour plates")
              .code(Code.snomed("271726001", "Color vision (observable entity)"))
              .value(
                  Layout.of(
                      Shapes.ratio(
                          new Spec.Ratio(
                              Unit.ONE,
                              Span.of(Unit.ONE, "0", "60"),
                              Span.of(Unit.ONE, "1", "60"),
                              0,
                              true)),
                      plates ->
                          new Datum.Ratio(
                              BigDecimal.valueOf(plates.correct()),
                              BigDecimal.valueOf(plates.shown()),
                              Unit.ONE),
                      List.of(TEST, EDITION, CONTROL),
                      (score, parts) ->
                          new Plates(
                              score.numerator().intValueExact(),
                              score.denominator().intValueExact(),
                              parts.get(TEST),
                              parts.find(EDITION),
                              parts.find(CONTROL))))
              .at(Site.EACH_OR_BOTH)
              .distinguishedBy(TEST)
              .cite("scored plates of 14, 24 and 38: FAA guide item 52; makers' sheet from memory")
              .note("Correct out of shown; whether that is normal needs an edition and a rule set.")
              .build());

  /** How red a red target looks to the worse eye, the better eye being 100 %. */
  public static final Finding<Quantity> RED_SATURATION =
      ENTRIES.add(
          Finding.of("red-saturation", "Red saturation compared with the fellow eye")
              .value(Shapes.measure(Unit.PERCENT, "0", "100", 0))
              .cite("Mikolajczyk et al: 24 % of healthy people report a difference, mean 9 %")
              .note("Percent of what the better eye sees, as the person says.")
              .build());

  /** How bright a light looks to the worse eye, the better eye being 100 %. */
  public static final Finding<Quantity> BRIGHTNESS =
      ENTRIES.add(
          Finding.of("brightness-comparison", "Brightness compared with the fellow eye")
              .value(Shapes.measure(Unit.PERCENT, "0", "100", 0))
              .cite("common practice, no source")
              .note("Percent of what the better eye sees, as the person says.")
              .build());

  /** A target carried across the vertical meridian. */
  public static final Finding<AcrossMeridian> ACROSS_MERIDIAN =
      ENTRIES.add(
          Finding.of("meridian-comparison", "Target compared across the vertical meridian")
              .value(
                  Layout.of(
                      Shapes.oneOf(MeridianDifference.class),
                      AcrossMeridian::difference,
                      List.of(QUALITY),
                      (difference, parts) -> new AcrossMeridian(difference, parts.get(QUALITY))))
              .distinguishedBy(QUALITY)
              .cite("common practice, no source")
              .note("Nasal and temporal are those of the field of the eye itself.")
              .build());

  private Colours() {}
}
