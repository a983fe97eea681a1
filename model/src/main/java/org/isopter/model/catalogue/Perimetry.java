package org.isopter.model.catalogue;

import java.math.BigDecimal;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * The indices of a perimetry, and the figures that say how far to trust them.
 *
 * <p>Mean deviation, pattern standard deviation and test duration are SNOMED CT's terms; fixation
 * loss, false positive and false negative those of HL7's FHIR guide Ophthalmology Retinal 0.1.0
 * (code system visual-field-observations). They stand in the order of their numbers in DICOM PS3.6,
 * group 0024; the index, which has none there, is last.
 */
public final class Perimetry {

  static final Entries ENTRIES = new Entries();

  /** Fixation losses, out of the catch trials. */
  public static final Finding<Datum.Ratio> FIXATION_LOSSES =
      reliability(
          "visual-field-fixation-losses",
          "Fixation losses in perimetry",
          "DICOM PS3.6 (0024,0036) Patient Not Properly Fixated Quantity of (0024,0035) Fixation"
              + " Checked Quantity");

  /** False negative answers, out of the catch trials; out of 100 where a percentage is printed. */
  public static final Finding<Datum.Ratio> FALSE_NEGATIVES =
      reliability(
          "visual-field-false-negatives",
          "False negative answers in perimetry",
          "DICOM PS3.6 (0024,0050) False Negatives Quantity of (0024,0048) Negative Catch Trials"
              + " Quantity");

  /** False positive answers, out of the catch trials; out of 100 where a percentage is printed. */
  public static final Finding<Datum.Ratio> FALSE_POSITIVES =
      reliability(
          "visual-field-false-positives",
          "False positive answers in perimetry",
          "DICOM PS3.6 (0024,0060) False Positives Quantity of (0024,0056) Positive Catch Trials"
              + " Quantity");

  /**
   * The global deviation of a field, its mean, from that of a healthy eye of the same age, in dB.
   */
  public static final Finding<BigDecimal> MEAN_DEVIATION =
      ENTRIES.add(
          Finding.of("visual-field-mean-deviation", "Mean deviation of the visual field")
              .code(Code.snomed("422859007", "Mean deviation"))
              .value(Shapes.number(Unit.DECIBEL, "-40", "40", 2))
              .by(FieldMethod.class)
              .cite(
                  "term: SNOMED CT 422859007; DICOM PS3.6 (0024,0066) Global Deviation From Normal;"
                      + " data-entry limits: common practice, no source")
              .note("As printed: makers differ in whether loss is negative or positive.")
              .build());

  /** The deviation from normal that is local: the root of the loss variance, in dB. */
  public static final Finding<BigDecimal> PATTERN_DEVIATION =
      ENTRIES.add(
          Finding.of(
                  "visual-field-pattern-standard-deviation",
                  "Pattern standard deviation of the visual field")
              .code(Code.snomed("421362004", "Pattern standard deviation"))
              .value(Shapes.number(Unit.DECIBEL, "0", "40", 2))
              .by(FieldMethod.class)
              .cite(
                  "term: SNOMED CT 421362004; DICOM PS3.6 (0024,0068) Localized Deviation From Normal;"
                      + " data-entry limits: common practice, no source")
              .build());

  /** How long the test took. */
  public static final Finding<Quantity> DURATION =
      ENTRIES.add(
          Finding.of("visual-field-test-duration", "Duration of the visual field test")
              .code(Code.snomed("252129004", "Test duration (observable entity)"))
              .value(
                  Shapes.measure(
                      1, Span.of(Unit.SECOND, "1", "7200"), Span.of(Unit.MINUTE, "0.1", "120")))
              .by(FieldMethod.class)
              .cite(
                  "DICOM PS3.6 (0024,0088) Visual Field Test Duration;"
                      + " data-entry limits: common practice, no source")
              .build());

  /** The visual field index, in percent of a full field. */
  public static final Finding<BigDecimal> FIELD_INDEX =
      ENTRIES.add(
          Finding.of("visual-field-index", "Visual field index")
              .value(Shapes.number(Unit.PERCENT, "0", "100", 1))
              .by(FieldMethod.class)
              .cite(
                  "DICOM PS3.16 CID 4257, code 111852 Visual Field Index, as an open FHIR edition prints it;"
                      + " data-entry limits: common practice, no source")
              .build());

  private Perimetry() {}

  private static Finding<Datum.Ratio> reliability(String id, String title, String term) {
    Shape<Datum.Ratio> outOf =
        Shapes.ratio(
            new Spec.Ratio(
                Unit.ONE, Span.of(Unit.ONE, "0", "1000"), Span.of(Unit.ONE, "1", "1000"), 1, true));
    return ENTRIES.add(
        Finding.of(id, title)
            .value(outOf)
            .by(FieldMethod.class)
            .cite(term + "; data-entry limits: common practice, no source")
            .note("Kept as errors out of trials; nothing is called reliable or not.")
            .build());
  }
}
