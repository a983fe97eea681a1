package org.isopter.model.clinical.acuity;

import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;

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

  private AcuityChange() {}

  /**
   * Returns what became of an acuity, one eye through one correction.
   *
   * <p>Named lines count at their nominal value. Withheld where the two were taken through
   * different corrections, where one has no logMAR, and where a suffix without a value could reach
   * across the limit.
   */
  public static Answer<Verdict> between(
      AcuityReading earlier, AcuityReading later, RetestLimit limit) {
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.change",
            limit.source(),
            "earlier acuity " + earlier.acuity(),
            "later acuity " + later.acuity(),
            "limit " + limit.logMar() + " logMAR");
    if (!isComparable(earlier, later)) {
      return topic.withheld("The two acuities were taken through different corrections.");
    }
    return LogMarInterval.of(earlier)
        .flatMap(one -> LogMarInterval.of(later).flatMap(two -> verdict(one, two, limit)))
        .map(verdict -> given(topic, earlier, later, verdict))
        .orElseGet(() -> topic.withheld("Whether the acuity has changed cannot be told."));
  }

  static boolean isComparable(AcuityReading one, AcuityReading two) {
    return one.correction().isEmpty()
        || two.correction().isEmpty()
        || one.correction().equals(two.correction());
  }

  private static Optional<Verdict> verdict(
      LogMarInterval earlier, LogMarInterval later, RetestLimit limit) {
    double least = later.best() - earlier.worst();
    double most = later.worst() - earlier.best();
    double edge = limit.logMar().doubleValue() + SLACK;
    if (least > edge) {
      return Optional.of(Verdict.WORSE);
    }
    if (most < -edge) {
      return Optional.of(Verdict.BETTER);
    }
    return least >= -edge && most <= edge ? Optional.of(Verdict.WITHIN_RETEST) : Optional.empty();
  }

  private static Answer<Verdict> given(
      StatementBuilder topic, AcuityReading earlier, AcuityReading later, Verdict verdict) {
    String text = "From %s to %s: %s.".formatted(earlier.acuity(), later.acuity(), verdict.words);
    return topic.given(verdict, Certainty.BY_RULE, text);
  }
}
