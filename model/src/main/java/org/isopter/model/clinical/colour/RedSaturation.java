package org.isopter.model.clinical.colour;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/**
 * How red a target looks to one eye compared with the other, as the person says.
 *
 * @param less the eye to which it looks less red; empty when it looks alike
 * @param ratio what the less saturated eye sees, as a share of the other, to 0.01
 * @param difference the difference in percent of full red
 */
public record RedSaturation(Optional<Site> less, BigDecimal ratio, BigDecimal difference) {

  private static final Citation SOURCE =
      new Citation(
          "Mikolajczyk et al, 2022, Neurol Clin Pract, as reviewed by the American Academy of"
              + " Ophthalmology, n = 101: 24 % of healthy people report a difference, mean 9 %,"
              + " range 2 to 25 %");

  private static final BigDecimal MOST = BigDecimal.valueOf(25);
  private static final BigDecimal FULL = BigDecimal.valueOf(100);

  /**
   * Returns the comparison, or a refusal for a percentage outside 0 to 100 or for none in both.
   *
   * @param right how red it looks to the right eye, in percent
   * @param left how red it looks to the left eye, in percent
   */
  public static Result<RedSaturation> of(BigDecimal right, BigDecimal left) {
    BigDecimal more = right.max(left);
    BigDecimal least = right.min(left);
    if (least.signum() < 0 || more.compareTo(FULL) > 0 || more.signum() == 0) {
      return Result.refused(
          Fault.of("", right + " % and " + left + " %", "0 to 100 %, above 0 in one eye"));
    }
    return Result.ok(
        new RedSaturation(
            less(right.compareTo(left)),
            least.divide(more, 2, RoundingMode.HALF_UP),
            more.subtract(least)));
  }

  private static Optional<Site> less(int right) {
    return right == 0 ? Optional.empty() : Optional.of(right < 0 ? Site.RIGHT : Site.LEFT);
  }

  /** Returns the comparison in words. */
  public Statement statement() {
    String text =
        less.map(
                eye ->
                    "Red looks less saturated to the %s eye: %s %% of what it is to the other."
                            .formatted(eye.word(), ratio.movePointRight(2).toPlainString())
                        + compared())
            .orElse("Red looks alike to both eyes.");
    return StatementBuilder.of("colour.red-saturation", SOURCE, "difference " + difference + " %")
        .say(Certainty.COMPUTED, text);
  }

  /** Up to 25 % was reported by healthy people too, which says nothing for either. */
  private String compared() {
    return difference.compareTo(MOST) > 0
        ? " No healthy person of one study reported so much, 25 % at most."
        : " By itself a difference of up to 25 % tells neither health nor disease.";
  }
}
