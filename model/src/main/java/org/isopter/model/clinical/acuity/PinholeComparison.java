package org.isopter.model.clinical.acuity;

import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;

/** What a pinhole did to an acuity, as recorded. */
public final class PinholeComparison {

  /** What a pinhole did. */
  public enum Effect {
    IMPROVED("improved the acuity"),
    /** Better by what repeated tests may differ by. */
    WITHIN_RETEST("gave a better reading, by no more than repeated tests may differ (0.18 logMAR)"),
    /** Better by letters of which nobody knows what they count. */
    PERHAPS_WITHIN_RETEST(
        "gave a better reading; whether by more than repeated tests may differ (0.18 logMAR) cannot"
            + " be told"),
    NOT_IMPROVED("did not improve the acuity"),
    WORSE("made the acuity worse");

    private final String words;

    Effect(String words) {
      this.words = words;
    }
  }

  /** The least that studies of letter charts and of charts of lines call a change, with slack. */
  private static final double RETEST = RetestLimit.LINES.least().doubleValue() + 0.0005;

  private PinholeComparison() {}

  /**
   * Returns what the pinhole did.
   *
   * <p>Withheld where the two acuities cannot be ordered, and where they were taken through
   * different corrections.
   *
   * @param without the acuity without a pinhole
   * @param through the acuity through it, or "not improved"
   */
  public static Answer<Effect> of(AcuityReading without, AcuityReading through) {
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.pinhole",
            Citation.COMMON_PRACTICE,
            "acuity " + without.words(),
            "through a pinhole " + through.words());
    if (!AcuityChange.isComparable(without, through)) {
      return topic.withheld("The pinhole was tried through another correction.");
    }
    if (through.acuity() instanceof Acuity.NotImproved) {
      return given(topic, Effect.NOT_IMPROVED, Certainty.COMPUTED);
    }
    if (without.acuity() instanceof Acuity.Low low
        && low.category() == LowVision.NO_LIGHT_PERCEPTION) {
      return topic.withheld("Without perception of light a pinhole compares nothing.");
    }
    Answer<AcuityOrder> order = AcuityComparison.compare(through, without);
    return order
        .value()
        .map(found -> effect(found, without, through))
        .map(effect -> given(topic, effect, order.statement().certainty()))
        .orElseGet(() -> topic.withheld("What the pinhole did cannot be told."));
  }

  private static Answer<Effect> given(StatementBuilder topic, Effect effect, Certainty certainty) {
    return topic.given(effect, certainty, "The pinhole " + effect.words + ".");
  }

  /** A few letters, or a line of many charts, are no effect. */
  private static Effect effect(AcuityOrder order, AcuityReading without, AcuityReading through) {
    return order == AcuityOrder.BETTER
        ? LogMarInterval.of(without)
            .flatMap(bare -> LogMarInterval.of(through).map(bare::minus))
            .map(PinholeComparison::gained)
            .orElse(Effect.IMPROVED)
        : effect(order);
  }

  private static Effect gained(LogMarInterval gain) {
    if (gain.best() > RETEST) {
      return Effect.IMPROVED;
    }
    return gain.worst() <= RETEST ? Effect.WITHIN_RETEST : Effect.PERHAPS_WITHIN_RETEST;
  }

  private static Effect effect(AcuityOrder order) {
    return switch (order) {
      case BETTER -> Effect.IMPROVED;
      case EQUAL -> Effect.NOT_IMPROVED;
      case WORSE -> Effect.WORSE;
    };
  }
}
