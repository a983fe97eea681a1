package org.isopter.model.catalogue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.finding.Alternative;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.When;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** Acuity at distance and near, each eye apart or both together. */
public final class Acuities {

  static final Entries ENTRIES = new Entries();

  private static final String NOTATION = "Notation of the acuity";

  /** The part that says what the eye looked through. */
  public static final Part<AcuityReading, Correction> CORRECTION =
      correction(AcuityReading::correction);

  private static final Part<AcuityReading, Chart> CHART = chart(AcuityReading::chart);

  private static final Part<AcuityReading, Quantity> DISTANCE_TESTED =
      distance(AcuityReading::distance);

  private static final Part<AcuityReading, Integer> LETTERS_PER_LINE =
      Part.optional(
          "letters-per-line",
          "Letters on each line of the chart",
          Shapes.count(1, 12),
          AcuityReading::lettersPerLine);

  private static final Part<AcuityReading, Boolean> READ_IN_PART =
      Part.optional(
          "read-in-part", "Line read in part only", Shapes.truth(), AcuityReading::readInPart);

  /**
   * The code for distance in the left eye was not seen in LOINC's own words; the one without a
   * distance stands in its place.
   */
  private static final Map<Site, Code> UNCORRECTED_FAR =
      new EnumMap<>(
          Map.of(
              Site.RIGHT,
              Code.loinc("98505-1", "Visual acuity far uncorrected Right eye"),
              Site.LEFT,
              Code.loinc("98498-9", "Visual acuity uncorrected Left eye"),
              Site.BOTH,
              Code.loinc("98506-9", "Visual acuity.binocular far uncorrected Eye")));

  private static final Map<Site, Code> BEST_CORRECTED =
      new EnumMap<>(
          Map.of(
              Site.RIGHT,
              Code.loinc("65893-0", "Visual acuity best corrected Right eye"),
              Site.LEFT,
              Code.loinc("65897-1", "Visual acuity best corrected Left eye")));

  /** Acuity at distance. */
  public static final Finding<AcuityReading> DISTANCE =
      ENTRIES.add(
          Finding.of("distance-acuity", "Distance visual acuity")
              .formerly(Code.loinc("98499-7", "Visual acuity uncorrected Right eye"))
              .sidedWhen(new When.Part("correction", Correction.UNAIDED), UNCORRECTED_FAR)
              .sidedWhen(new When.Part("correction", Correction.TRIAL_LENSES), BEST_CORRECTED)
              .sided(
                  Code.snomed(
                      "386714003", "Distance visual acuity - right eye (observable entity)"),
                  Code.snomed("386716001", "Distance visual acuity - left eye (observable entity)"))
              .together(Code.snomed("251742009", "Distance visual acuity - binocular"))
              .code(Code.snomed("251739003", "Distance visual acuity (observable entity)"))
              .value(layout("distance-notation", AcuityNotations.DISTANCE))
              .at(Site.EACH_OR_BOTH)
              .distinguishedBy(CORRECTION)
              .cite("DICOM PS3.17 Annex RR: a suffix has no numerical value on traditional charts")
              .note("Without a pinhole; what a pinhole gave is a finding of its own.")
              .build());

  /** Acuity at distance through a pinhole. */
  public static final Finding<AcuityReading> PINHOLE =
      ENTRIES.add(
          Finding.of("pinhole-acuity", "Pinhole visual acuity")
              .code(Code.snomed("419475002", "Pinhole visual acuity (observable entity)"))
              .value(layout("pinhole-notation", AcuityNotations.PINHOLE))
              .distinguishedBy(CORRECTION)
              .cite("common practice, no source")
              .note("The correction is what was worn behind the pinhole; NI is not improved.")
              .build());

  /** Acuity at reading distance. */
  public static final Finding<AcuityReading> NEAR =
      ENTRIES.add(
          Finding.of("near-acuity", "Near visual acuity")
              .sidedWhen(
                  new When.Part("correction", Correction.UNAIDED),
                  Map.of(
                      Site.LEFT, Code.loinc("98501-0", "Visual acuity near uncorrected Left eye")))
              .sided(
                  Code.snomed("386712004", "Near visual acuity - right eye (observable entity)"),
                  Code.snomed("386711006", "Near visual acuity - left eye (observable entity)"))
              .together(Code.snomed("251746007", "Near visual acuity - binocular"))
              .code(Code.snomed("251743004", "Near visual acuity (observable entity)"))
              .value(layout("near-notation", AcuityNotations.NEAR))
              .at(Site.EACH_OR_BOTH)
              .distinguishedBy(CORRECTION)
              .cite("common practice, no source: N is a size of print, not an angle")
              .note("N and Jaeger sizes are kept as written: they convert to no angle.")
              .build());

  private static final Part<AcuityBound, Term> SIDE_OF_LINE =
      Part.required(
          "side-of-line",
          "Side of the line",
          Shapes.oneOfWords("side-of-line", "worse", "better"),
          AcuityBound::side);

  private static final Part<AcuityBound, Correction> BOUND_CORRECTION =
      correction(AcuityBound::correction);

  private static final Part<AcuityBound, Chart> BOUND_CHART = chart(AcuityBound::chart);

  private static final Part<AcuityBound, Quantity> BOUND_DISTANCE = distance(AcuityBound::distance);

  /** An acuity known only as worse or better than a line; it is no acuity. */
  public static final Finding<AcuityBound> BOUND =
      ENTRIES.add(
          Finding.of("acuity-beyond-line", "Distance visual acuity beyond a line")
              .value(
                  Layout.of(
                      new Choice<>(
                          "line-notation",
                          "notation",
                          NOTATION,
                          AcuityBound::line,
                          written(BOUND_DISTANCE),
                          AcuityNotations.CHART),
                      List.of(SIDE_OF_LINE, BOUND_CORRECTION, BOUND_CHART, BOUND_DISTANCE),
                      (line, parts) ->
                          new AcuityBound(
                              line,
                              parts.get(SIDE_OF_LINE),
                              parts.find(BOUND_CORRECTION),
                              parts.find(BOUND_CHART),
                              parts.find(BOUND_DISTANCE))))
              .at(Site.EACH_OR_BOTH)
              .distinguishedBy(BOUND_CORRECTION)
              .cite("common practice, no source")
              .note("The line is a limit and never the acuity itself.")
              .build());

  private Acuities() {}

  private static <V> Part<V, Correction> correction(Function<V, Optional<Correction>> getter) {
    return Part.optional(
        "correction", "Correction worn during the test", Shapes.oneOf(Correction.class), getter);
  }

  private static <V> Part<V, Chart> chart(Function<V, Optional<Chart>> getter) {
    return Part.optional("chart", "Chart", Shapes.oneOf(Chart.class), getter);
  }

  private static <V> Part<V, Quantity> distance(Function<V, Optional<Quantity>> getter) {
    return Part.optional(
            "distance",
            "Testing distance",
            Shapes.measure(
                2,
                Span.of(Unit.METRE, "0.1", "10"),
                Span.of(Unit.CENTIMETRE, "10", "1000"),
                Span.of(Unit.FOOT, "0.3", "30"),
                Span.of(Unit.INCH, "4", "360")),
            getter)
        .coded(Code.snomed("252124009", "Test distance (observable entity)"));
  }

  private static <V> Choice.Written<Acuity> written(Part<V, Quantity> distance) {
    return new Choice.Written<>(
        AcuityText.PATTERN,
        (text, others) -> AcuityText.parse(text, others.find(distance)),
        (chosen, others) -> AcuityText.write(chosen, others.find(distance)));
  }

  private static Layout<AcuityReading> layout(
      String list, List<Alternative<? extends Acuity>> notations) {
    Choice<AcuityReading, Acuity> acuity =
        new Choice<>(
            list, "notation", NOTATION, AcuityReading::acuity, written(DISTANCE_TESTED), notations);
    return Layout.of(
        acuity,
        List.of(CORRECTION, CHART, DISTANCE_TESTED, LETTERS_PER_LINE, READ_IN_PART),
        (value, parts) ->
            new AcuityReading(
                value,
                parts.find(CORRECTION),
                parts.find(CHART),
                parts.find(DISTANCE_TESTED),
                parts.find(LETTERS_PER_LINE),
                parts.find(READ_IN_PART)));
  }
}
