package org.isopter.model.clinical.pupil;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Site;

/**
 * A measure of one side against the other, in mm as measured.
 *
 * @param difference how much the greater is greater, never negative
 * @param greater the side with the greater value; empty when they are equal
 */
public record SideDifference(BigDecimal difference, Optional<Site> greater) {

  private static final BigDecimal UNUSUAL = BigDecimal.valueOf(2);
  private static final Citation EXOPHTHALMOMETRY =
      new Citation("asymmetry of more than 2 mm is unusual: abstract 18832980");

  /** Returns the difference of two measures in mm. */
  public static SideDifference of(BigDecimal right, BigDecimal left) {
    int more = right.compareTo(left);
    Optional<Site> greater =
        more == 0 ? Optional.empty() : Optional.of(more > 0 ? Site.RIGHT : Site.LEFT);
    return new SideDifference(right.subtract(left).abs(), greater);
  }

  /** Says whether a difference in exophthalmometry, taken with one base, is unusual: over 2 mm. */
  public Answer<Boolean> isUnusualProtrusion() {
    boolean unusual = difference.compareTo(UNUSUAL) > 0;
    return StatementBuilder.of(
            "orbit.protrusion", EXOPHTHALMOMETRY, "difference " + difference + " mm")
        .given(
            unusual,
            Certainty.BY_RULE,
            words("protrusion")
                + (unusual
                    ? " More than 2 mm is unusual."
                    : " It is the difference alone that is compared: both may protrude."));
  }

  /** Returns a difference of the lids in words; no cut-off is published for it. */
  public Statement lids(String measure) {
    return StatementBuilder.of(
            "lids.difference", Citation.COMMON_PRACTICE, "difference " + difference + " mm")
        .say(Certainty.COMPUTED, words(measure));
  }

  private String words(String measure) {
    return greater
        .map(
            eye ->
                "The %s is greater on the %s by %s mm.".formatted(measure, eye.word(), difference))
        .orElse("The " + measure + " is equal on both sides.");
  }
}
