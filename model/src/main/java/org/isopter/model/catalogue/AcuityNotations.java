package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.PinholeEffect;
import org.isopter.model.finding.Alternative;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Code;
import org.isopter.model.value.JaegerType;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** The notations an acuity may be recorded in, each an alternative of the choice. */
final class AcuityNotations {

  private static final Part<Acuity.Fraction, Integer> LETTERS =
      Part.optional(
          "letters",
          "Letters read beyond the line (plus) or missed on it (minus)",
          Shapes.count(-9, 9),
          fraction -> Optional.of(fraction.letters()).filter(letters -> letters != 0));

  private static final Part<Acuity.Low, Quantity> SHOWN_AT =
      Part.optional(
          "shown-at",
          "Distance at which fingers, a hand or a light was shown",
          Shapes.measure(
              2,
              Span.of(Unit.METRE, "0.05", "6"),
              Span.of(Unit.CENTIMETRE, "5", "600"),
              Span.of(Unit.FOOT, "0.2", "20")),
          Acuity.Low::distance);

  private static final Alternative<Acuity.Fraction> METRIC =
      fraction("snellen-metric", "Snellen fraction in metres", Unit.METRE, "20", "2000");

  private static final Alternative<Acuity.Fraction> IMPERIAL =
      fraction("snellen-imperial", "Snellen fraction in feet", Unit.FOOT, "40", "8000");

  private static final Alternative<Acuity.DecimalFraction> DECIMAL =
      Alternative.of(
          notation("decimal", "Decimal acuity"),
          Acuity.DecimalFraction.class,
          Shapes.number(Unit.DECIMAL, "0.001", "4", 4),
          Acuity.DecimalFraction::value,
          Acuity.DecimalFraction::new);

  private static final Alternative<Acuity.LogMar> LOGMAR =
      Alternative.of(
          notation("logmar", "Logarithm of the minimum angle of resolution"),
          Acuity.LogMar.class,
          Shapes.number(Unit.LOGMAR, "-0.5", "3", 3),
          Acuity.LogMar::value,
          Acuity.LogMar::new);

  private static final Alternative<Acuity.Letters> LETTER_COUNT =
      Alternative.of(
          notation("letters", "Letters read on a chart scored by letters"),
          Acuity.Letters.class,
          Shapes.count(0, 120),
          Acuity.Letters::count,
          Acuity.Letters::new);

  private static final Alternative<Acuity.Low> LOW =
      Alternative.of(
          notation("low-vision", "Vision too low for a chart"),
          Acuity.Low.class,
          Shapes.oneOf(LowVision.class),
          Acuity.Low::category,
          List.of(SHOWN_AT),
          (category, parts) -> new Acuity.Low(category, parts.find(SHOWN_AT)));

  private static final Alternative<Acuity.Points> POINTS =
      Alternative.of(
          notation("points", "Near print in N points"),
          Acuity.Points.class,
          Shapes.number(Unit.POINT, "2", "80", 1),
          Acuity.Points::size,
          Acuity.Points::new);

  private static final Alternative<Acuity.Jaeger> JAEGER =
      Alternative.of(
          notation("jaeger", "Near print on a Jaeger card"),
          Acuity.Jaeger.class,
          Shapes.oneOf(Answers.of("jaeger-type", JaegerType.ALL), JaegerType.class),
          Acuity.Jaeger::type,
          Acuity.Jaeger::new);

  private static final Alternative<Acuity.MUnits> M_UNITS =
      Alternative.of(
          notation("m-units", "Near print in M units"),
          Acuity.MUnits.class,
          Shapes.number(Unit.M_UNIT, "0.1", "20", 2),
          Acuity.MUnits::size,
          Acuity.MUnits::new);

  private static final Alternative<Acuity.NotImproved> NOT_IMPROVED =
      Alternative.of(
          notation("not-improved", "Not improved by a pinhole"),
          Acuity.NotImproved.class,
          Shapes.oneOf(PinholeEffect.class),
          none -> PinholeEffect.NOT_IMPROVED,
          effect -> new Acuity.NotImproved());

  static final List<Alternative<? extends Acuity>> DISTANCE =
      List.of(METRIC, IMPERIAL, DECIMAL, LOGMAR, LETTER_COUNT, LOW);

  /** What a chart has an end of. */
  static final List<Alternative<? extends Acuity>> CHART =
      List.of(METRIC, IMPERIAL, DECIMAL, LOGMAR, LETTER_COUNT);

  static final List<Alternative<? extends Acuity>> PINHOLE =
      List.of(METRIC, IMPERIAL, DECIMAL, LOGMAR, LETTER_COUNT, LOW, NOT_IMPROVED);

  static final List<Alternative<? extends Acuity>> NEAR =
      List.of(POINTS, JAEGER, M_UNITS, METRIC, IMPERIAL, DECIMAL, LOGMAR);

  private AcuityNotations() {}

  private static Alternative<Acuity.Fraction> fraction(
      String word, String title, Unit unit, String farthest, String largest) {
    Span distances = Span.of(unit, "0.1", farthest);
    Span letters = Span.of(unit, "0.1", largest);
    return Alternative.of(
            notation(word, title),
            Acuity.Fraction.class,
            Shapes.ratio(new Spec.Ratio(unit, distances, letters, 2, false)),
            fraction -> new Datum.Ratio(fraction.numerator(), fraction.denominator(), unit),
            List.of(LETTERS),
            (line, parts) ->
                new Acuity.Fraction(
                    line.numerator(), line.denominator(), unit, parts.find(LETTERS).orElse(0)))
        .when(fraction -> fraction.unit().equals(unit));
  }

  private static Term notation(String word, String title) {
    return new Term(word, Code.local("acuity-notation", word, title));
  }
}
