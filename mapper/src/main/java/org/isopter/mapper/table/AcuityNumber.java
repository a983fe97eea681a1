package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.clinical.acuity.AcuityEquivalents;
import org.isopter.model.clinical.acuity.LowVisionConvention;
import org.isopter.model.clinical.acuity.NearAcuity;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;

/**
 * What an acuity is in numbers beside its exact logMAR, so that none lacks a number without a
 * reason: assumptions stand in columns of their own, each under the name of its rule. A limit that
 * was not reached is no number of what was measured either.
 *
 * @param line the logMAR of the line alone, without letters read beyond it or missed on it; of a
 *     limit the limit
 * @param assumed the logMAR under the assumption that the rule names
 * @param rank how low a vision below any chart is, from 1; more is worse
 * @param rule how the numbers come about, or why there is none
 */
public record AcuityNumber(
    Optional<BigDecimal> line, Optional<BigDecimal> assumed, Optional<Integer> rank, Rule rule) {

  /** How the numbers come about, or why there is none. */
  public enum Rule {
    /** The acuity as recorded, in logMAR. */
    RECORDED,
    /** Letters count by the letters that the chart is stated to have on each line. */
    LETTERS_COUNTED,
    /**
     * A letter is taken for 0.02 logMAR: five letters a line, which the chart is not stated to
     * have.
     */
    FIVE_LETTERS_ASSUMED,
    /**
     * Letters beyond a line or missed on it cannot be counted: the chart is stated to have another
     * number on a line than five, or they would be a whole line.
     */
    LETTERS_NOT_COUNTED,
    /**
     * A fraction, a decimal or a logMAR of a card for near: it is an angle at the distance that the
     * card is made for, and the print is taken to have been read there.
     */
    DISTANCE_OF_CARD_ASSUMED,
    /** A limit that the value lies beyond, on whichever side. */
    LIMIT,
    /** The line was read in part: how many of its letters is not stated. */
    READ_IN_PART,
    /** Measured for this category and distance by Schulze-Bonsel 2006, IOVS 47:1236. */
    SCHULZE_BONSEL_2006,
    /** Too low for a chart, and no number is published for it. */
    TOO_LOW,
    /**
     * N points at a stated distance: eight points are taken for 1 M, the height of the letters
     * being that of one typeface. ICD-11, 9D90, has N6 beside 0.8 M.
     */
    EIGHT_POINTS_ASSUMED,
    /** A size of print, which is an angle only at a stated distance. */
    SIZE_OF_PRINT,
    /** A pinhole did not improve it: the acuity without the pinhole is the acuity. */
    NOT_IMPROVED;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  private static final BigDecimal LETTER = new BigDecimal("0.02");

  /** The points of print that count as 1 M. */
  private static final BigDecimal POINTS = BigDecimal.valueOf(8);

  /** The letters of a line for which a letter is 0.02 logMAR. */
  private static final int LINE = 5;

  /** Returns the numbers of a fact; empty where it is neither an acuity nor a limit. */
  static Optional<AcuityNumber> of(Fact<?> fact, Optional<Quantity> exact) {
    Object value = fact.outcome().<Object>fold(found -> found, absent -> absent);
    if (value instanceof AcuityReading reading) {
      boolean near = fact.finding() == Acuities.NEAR;
      return Optional.of(of(reading, near && exact.isEmpty(), exact.isPresent()));
    }
    if (value instanceof AcuityBound bound) {
      return Optional.of(alone(line(bound.line()), Rule.LIMIT));
    }
    return value instanceof Pressures.Beyond beyond
        ? Optional.of(alone(Optional.of(beyond.limit().value()), Rule.LIMIT))
        : Optional.empty();
  }

  private static AcuityNumber alone(Optional<BigDecimal> line, Rule rule) {
    return new AcuityNumber(line, Optional.empty(), Optional.empty(), rule);
  }

  private static AcuityNumber of(AcuityReading reading, boolean ofCard, boolean exact) {
    Optional<BigDecimal> line = line(reading.acuity());
    if (reading.isInPart() && !(reading.acuity() instanceof Acuity.Low)) {
      return alone(line, Rule.READ_IN_PART);
    }
    if (reading.acuity() instanceof Acuity.Fraction fraction && fraction.letters() != 0) {
      return partial(fraction, reading.lettersPerLine().orElse(LINE), ofCard, exact);
    }
    Optional<BigDecimal> print = print(reading);
    if (print.isPresent()) {
      return new AcuityNumber(Optional.empty(), print, Optional.empty(), Rule.EIGHT_POINTS_ASSUMED);
    }
    return ofCard && line.isPresent()
        ? new AcuityNumber(line, line, Optional.empty(), Rule.DISTANCE_OF_CARD_ASSUMED)
        : of(reading.acuity(), exact);
  }

  /** Returns the logMAR of N points that were read at a stated distance. */
  private static Optional<BigDecimal> print(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Points points
        ? NearAcuity.of(new Acuity.MUnits(points.size().divide(POINTS)), reading.distance())
            .value()
            .map(NearAcuity.Equivalents::logMar)
        : Optional.empty();
  }

  private static AcuityNumber of(Acuity acuity, boolean exact) {
    if (acuity instanceof Acuity.Low low) {
      Optional<BigDecimal> published = LowVisionConvention.SCHULZE_BONSEL_2006.logMar(low).value();
      Rule rule = published.isPresent() ? Rule.SCHULZE_BONSEL_2006 : Rule.TOO_LOW;
      return new AcuityNumber(Optional.empty(), published, Optional.of(rank(low)), rule);
    }
    Optional<BigDecimal> line = line(acuity);
    Rule rule =
        exact
            ? Rule.RECORDED
            : acuity instanceof Acuity.NotImproved ? Rule.NOT_IMPROVED : Rule.SIZE_OF_PRINT;
    return alone(line, rule);
  }

  private static AcuityNumber partial(
      Acuity.Fraction fraction, int lettersPerLine, boolean ofCard, boolean exact) {
    Optional<BigDecimal> line = line(fraction);
    boolean whole = Math.abs(fraction.letters()) >= LINE;
    if (!exact && (ofCard || whole || lettersPerLine != LINE)) {
      return alone(line, Rule.LETTERS_NOT_COUNTED);
    }
    Optional<BigDecimal> assumed =
        line.map(full -> full.subtract(LETTER.multiply(BigDecimal.valueOf(fraction.letters()))))
            .filter(any -> !exact);
    Rule rule = exact ? Rule.LETTERS_COUNTED : Rule.FIVE_LETTERS_ASSUMED;
    return new AcuityNumber(line, assumed, Optional.empty(), rule);
  }

  private static Optional<BigDecimal> line(Acuity acuity) {
    return AcuityEquivalents.of(acuity).value().map(AcuityEquivalents.Equivalents::logMar);
  }

  private static int rank(Acuity.Low low) {
    LowVision category = low.category();
    return switch (category) {
      case COUNTING_FINGERS -> 1;
      case HAND_MOVEMENTS -> 2;
      case LIGHT_PERCEPTION, LIGHT_PERCEPTION_ACCURATE, LIGHT_PERCEPTION_INACCURATE -> 3;
      case NO_LIGHT_PERCEPTION -> 4;
    };
  }
}
