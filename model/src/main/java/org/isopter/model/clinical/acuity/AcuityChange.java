package org.isopter.model.clinical.acuity;

import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;

/** Change of an acuity against a published test-retest limit that the caller names. */
public final class AcuityChange {

  /** What a difference amounts to. */
  public enum Verdict {
    /** Not beyond the limit: not to be called a change. */
    WITHIN_RETEST("within the test-retest limit: not to be called a change"),
    /** Better by more than the limit. */
    BETTER("better by more than the test-retest limit"),
    /** Worse by more than the limit. */
    WORSE("worse by more than the test-retest limit");

    private final String words;

    Verdict(String words) {
      this.words = words;
    }
  }

  private static final double SLACK = 0.0005;

  /** Not "category": hand movements and light are one category of vision impairment. */
  private static final String STEPS = " in the order letters, fingers, hand, light, none.";

  private static final Citation LOW_VISION =
      new Citation("order of low vision: common practice, no source; no retest limit is published");

  private AcuityChange() {}

  /**
   * Returns what became of an acuity, one eye through one correction.
   *
   * <p>Named lines count at their nominal value. Where one of the two is low vision, only the order
   * is given. Withheld where the two were taken through different corrections, where one has no
   * logMAR, where a suffix without a value could reach across the limit, and where published limits
   * disagree.
   */
  public static Answer<Verdict> between(
      AcuityReading earlier, AcuityReading later, RetestLimit limit) {
    boolean low = isLow(earlier) || isLow(later);
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.change",
            low ? LOW_VISION : limit.source(),
            "earlier acuity " + earlier.words(),
            "later acuity " + later.words());
    if (!isComparable(earlier, later)) {
      return topic.withheld("The two acuities were taken through different corrections.");
    }
    return low
        ? byOrder(topic, earlier, later)
        : byLimit(topic.with("limit " + limit.words()), earlier, later, limit);
  }

  private static boolean isLow(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Low;
  }

  static boolean isComparable(AcuityReading one, AcuityReading two) {
    return one.correction().isEmpty()
        || two.correction().isEmpty()
        || one.correction().equals(two.correction());
  }

  private static Answer<Verdict> byOrder(
      StatementBuilder topic, AcuityReading earlier, AcuityReading later) {
    Optional<AcuityOrder> order = LowVisionOrder.order(later.acuity(), earlier.acuity());
    if (order.isEmpty()) {
      return topic.withheld(unknown(earlier, later));
    }
    String from = "From %s to %s: ".formatted(earlier.words(), later.words());
    return switch (order.get()) {
      case BETTER -> topic.given(Verdict.BETTER, Certainty.BY_CONVENTION, from + "better" + STEPS);
      case WORSE -> topic.given(Verdict.WORSE, Certainty.BY_CONVENTION, from + "worse" + STEPS);
      case EQUAL ->
          topic.given(Verdict.WITHIN_RETEST, Certainty.BY_CONVENTION, from + "alike" + STEPS);
    };
  }

  private static Answer<Verdict> byLimit(
      StatementBuilder topic, AcuityReading earlier, AcuityReading later, RetestLimit limit) {
    Optional<LogMarInterval> apart =
        LogMarInterval.of(earlier)
            .flatMap(one -> LogMarInterval.of(later).map(two -> two.minus(one)));
    if (apart.isEmpty()) {
      return topic.withheld(unknown(earlier, later));
    }
    return verdict(apart.get(), limit)
        .map(verdict -> given(topic, earlier, later, verdict))
        .orElseGet(() -> topic.withheld(between(apart.get(), limit, earlier, later)));
  }

  private static Optional<Verdict> verdict(LogMarInterval apart, RetestLimit limit) {
    double least = limit.least().doubleValue() + SLACK;
    double most = limit.most().doubleValue() + SLACK;
    if (apart.best() > most) {
      return Optional.of(Verdict.WORSE);
    }
    if (apart.worst() < -most) {
      return Optional.of(Verdict.BETTER);
    }
    return apart.best() >= -least && apart.worst() <= least
        ? Optional.of(Verdict.WITHIN_RETEST)
        : Optional.empty();
  }

  private static String between(
      LogMarInterval apart, RetestLimit limit, AcuityReading earlier, AcuityReading later) {
    return apart.isPoint()
        ? "From %s to %s: published test-retest limits for such charts disagree (%s)."
            .formatted(earlier.words(), later.words(), limit.words())
        : unknown(earlier, later);
  }

  private static String unknown(AcuityReading earlier, AcuityReading later) {
    return "Whether %s to %s is a change cannot be told.".formatted(earlier.words(), later.words());
  }

  private static Answer<Verdict> given(
      StatementBuilder topic, AcuityReading earlier, AcuityReading later, Verdict verdict) {
    String text = "From %s to %s: %s.".formatted(earlier.words(), later.words(), verdict.words);
    return topic.given(verdict, Certainty.BY_RULE, text);
  }
}
