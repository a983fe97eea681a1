package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
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
   */
  public record Plates(int correct, int shown, ColourTest test, Optional<Integer> edition) {}

  private static final Part<Plates, ColourTest> TEST =
      Part.required("plate-test", "Set of plates", Shapes.oneOf(ColourTest.class), Plates::test);

  private static final Part<Plates, Integer> EDITION =
      Part.optional("edition", "Plates in the edition", Shapes.count(4, 60), Plates::edition);

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
                      List.of(TEST, EDITION),
                      (score, parts) ->
                          new Plates(
                              score.numerator().intValueExact(),
                              score.denominator().intValueExact(),
                              parts.get(TEST),
                              parts.find(EDITION))))
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

  private Colours() {}
}
