package org.isopter.model.clinical.field;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** A usual limit from which a perimeter flags a test as less reliable. */
public enum PerimetryFlag {
  FIXATION_LOSSES(20, true, "common practice, no source", ""),
  FALSE_POSITIVES(15, false, "from memory: newer thresholding", ""),
  FALSE_POSITIVES_FULL_THRESHOLD(33, true, "from memory: older full threshold", ""),
  FALSE_NEGATIVES(
      33,
      true,
      "Arch Ophthalmol 1988;106:1252; number from memory",
      " They rise with true loss, not only with inattention.");

  private final int percent;
  private final boolean included;
  private final Citation source;
  private final String beside;

  PerimetryFlag(int percent, boolean included, String source, String beside) {
    this.percent = percent;
    this.included = included;
    this.source = new Citation(source);
    this.beside = beside;
  }

  /**
   * Says whether the test is flagged, or refuses counts that are no share.
   *
   * @param errors the wrong answers
   * @param trials the trials, at least one
   */
  public Result<Answer<Boolean>> of(int errors, int trials) {
    if (trials < 1 || errors < 0 || errors > trials) {
      return Result.refused(
          Fault.of("", errors + " of " + trials, "errors of at least one trial, no more than it"));
    }
    int over = Integer.compare(errors * 100, percent * trials);
    boolean flagged = over > 0 || (over == 0 && included);
    String what = Concept.word(this).replace('-', ' ');
    StatementBuilder topic =
        StatementBuilder.of("perimetry.flag", source, what + " " + errors + " of " + trials);
    String text =
        "%s of %s is %s the limit of %s %%.%s"
            .formatted(errors, trials, flagged ? "at or over" : "within", percent, beside);
    return Result.ok(topic.given(flagged, Certainty.BY_RULE, text));
  }

  /** Says whether a threshold of a point is abnormally high: 40 dB or more. */
  public static Answer<Boolean> highThreshold(BigDecimal decibels) {
    boolean high = decibels.compareTo(BigDecimal.valueOf(40)) >= 0;
    return StatementBuilder.of(
            "perimetry.threshold", Citation.COMMON_PRACTICE, "threshold " + decibels + " dB")
        .given(
            high,
            Certainty.BY_RULE,
            "A threshold of %s dB is %sabnormally high: the limit is 40 dB or more."
                .formatted(decibels, high ? "" : "not "));
  }
}
