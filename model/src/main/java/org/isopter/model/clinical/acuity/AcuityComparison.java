package org.isopter.model.clinical.acuity;

import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;

/**
 * Which of two distance acuities is better, as recorded; whether the difference means anything is
 * for {@link AcuityChange}.
 */
public final class AcuityComparison {

  private static final double SAME = 0.0005;
  private static final Citation SOURCE =
      new Citation(
          "order of angles: by definition; suffixes: DICOM PS3.17 RR.2.3, Charles and Frost 2022;"
              + " order of low vision: common practice, no source");

  private AcuityComparison() {}

  /**
   * Returns how the first acuity stands to the second.
   *
   * <p>Named lines are compared at their nominal value. Withheld where a suffix without a numerical
   * value could turn the order round, where low vision has no comparable distance, and between near
   * print and distance charts.
   */
  public static Answer<AcuityOrder> compare(AcuityReading first, AcuityReading second) {
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.order",
            SOURCE,
            "first acuity " + first.words(),
            "second acuity " + second.words());
    return order(first, second)
        .map(order -> topic.given(order.order(), order.certainty(), words(first, second, order)))
        .orElseGet(() -> topic.withheld("The order of these acuities cannot be told."));
  }

  private static Optional<Ordered> order(AcuityReading first, AcuityReading second) {
    if (first.acuity() instanceof Acuity.Low || second.acuity() instanceof Acuity.Low) {
      return LowVisionOrder.order(first.acuity(), second.acuity())
          .map(order -> new Ordered(order, Certainty.BY_CONVENTION));
    }
    return sameLine(first, second).or(() -> byReach(first, second));
  }

  private static Optional<Ordered> byReach(AcuityReading first, AcuityReading second) {
    return LogMarInterval.of(first)
        .flatMap(one -> LogMarInterval.of(second).flatMap(two -> byReach(one, two)))
        .map(order -> new Ordered(order, Certainty.COMPUTED));
  }

  private static Optional<AcuityOrder> byReach(LogMarInterval one, LogMarInterval two) {
    if (one.isPoint() && two.isPoint() && Math.abs(one.best() - two.best()) < SAME) {
      return Optional.of(AcuityOrder.EQUAL);
    }
    if (one.worst() < two.best() - SAME) {
      return Optional.of(AcuityOrder.BETTER);
    }
    return one.best() > two.worst() + SAME ? Optional.of(AcuityOrder.WORSE) : Optional.empty();
  }

  /** On one line more letters are better, whatever a letter is worth; it must be one chart. */
  private static Optional<Ordered> sameLine(AcuityReading first, AcuityReading second) {
    if (!(first.acuity() instanceof Acuity.Fraction one)
        || !(second.acuity() instanceof Acuity.Fraction two)
        || !isSameLine(one, two)
        || (one.letters() == 0 && two.letters() == 0 && first.isInPart() == second.isInPart())
        || isUncounted(first, second)) {
      return Optional.empty();
    }
    int more = Integer.compare(AcuityScale.suffix(first), AcuityScale.suffix(second));
    AcuityOrder order =
        more > 0 ? AcuityOrder.BETTER : more < 0 ? AcuityOrder.WORSE : AcuityOrder.EQUAL;
    return Optional.of(new Ordered(order, Certainty.BY_CONVENTION));
  }

  /** A part of a line is fewer letters than the whole, and not more or fewer than a count. */
  private static boolean isUncounted(AcuityReading first, AcuityReading second) {
    boolean fewer = AcuityScale.suffix(first) < 0 && AcuityScale.suffix(second) < 0;
    return fewer && (first.isInPart() || second.isInPart());
  }

  private static boolean isSameLine(Acuity.Fraction one, Acuity.Fraction two) {
    return one.unit().equals(two.unit())
        && one.numerator().compareTo(two.numerator()) == 0
        && one.denominator().compareTo(two.denominator()) == 0;
  }

  private static String words(AcuityReading first, AcuityReading second, Ordered order) {
    String relation =
        switch (order.order()) {
          case BETTER -> "is better than";
          case WORSE -> "is worse than";
          case EQUAL -> "equals";
        };
    String same = order.certainty() == Certainty.COMPUTED ? "" : ", if both were tested alike";
    return "%s %s %s%s.".formatted(first.words(), relation, second.words(), same);
  }

  private record Ordered(AcuityOrder order, Certainty certainty) {}
}
