package org.isopter.model.clinical.pupil;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/**
 * The difference of the pupils in one light.
 *
 * @param difference how much the larger pupil is larger, in mm, never negative; as measured
 * @param larger the eye with the larger pupil; empty when they are equal
 */
public record Anisocoria(BigDecimal difference, Optional<Site> larger) {

  /** What the same pupil measured twice may differ by, in mm. */
  public static final BigDecimal REPEATABILITY = new BigDecimal("0.2");

  /** From here on a difference is rare in healthy people, in mm. */
  public static final BigDecimal RARE = BigDecimal.ONE;

  private static final Citation SOURCE =
      new Citation(
          "PupilX study, doi 10.5301/ejo.5001027: repeatability better than 0.2 mm; 1 mm or more is"
              + " rare: Walsh and Hoyt, Clinical Neuro-Ophthalmology, as quoted by Stanford"
              + " Neuro-Ophthalmology");

  /**
   * Returns the difference of two diameters in mm, or a refusal for one that is not above zero.
   *
   * @param right the diameter of the right pupil in mm
   * @param left the diameter of the left pupil in mm
   */
  public static Result<Anisocoria> of(BigDecimal right, BigDecimal left) {
    if (right.signum() <= 0 || left.signum() <= 0) {
      return Result.refused(
          Fault.of("", right + " mm and " + left + " mm", "two diameters above 0 mm"));
    }
    return Result.ok(new Anisocoria(right.subtract(left).abs(), larger(right.compareTo(left))));
  }

  private static Optional<Site> larger(int right) {
    return right == 0 ? Optional.empty() : Optional.of(right > 0 ? Site.RIGHT : Site.LEFT);
  }

  /** Returns the difference in words. */
  public Statement statement() {
    String fact = "difference " + difference + " mm";
    String text =
        larger
            .map(
                eye ->
                    "The %s pupil is larger by %s mm.".formatted(eye.word(), difference) + more())
            .orElse("The pupils are equal as measured.");
    return StatementBuilder.of("pupils.anisocoria", SOURCE, fact).say(Certainty.COMPUTED, text);
  }

  private String more() {
    if (difference.compareTo(REPEATABILITY) <= 0) {
      return " Measuring twice may differ by as much.";
    }
    return difference.compareTo(RARE) >= 0 ? " So much is rare in healthy people." : "";
  }

  /**
   * Returns how a difference in bright light and one in dim light go together.
   *
   * <p>A difference or a change of up to 0.2 mm is none, for repeated measuring gives as much.
   * Withheld where the larger pupil changes sides by more than that.
   */
  public static Answer<PupilInequality> inLightAndDark(Anisocoria bright, Anisocoria dim) {
    StatementBuilder topic =
        StatementBuilder.of(
            "pupils.light-and-dark", Sources.PUPIL_WIRING, bright.fact("bright"), dim.fact("dim"));
    return PupilInequality.of(bright, dim)
        .map(found -> topic.given(found, Certainty.COMPUTED, found.words()))
        .orElseGet(() -> topic.withheld("The larger pupil is not the same in both lights."));
  }

  private String fact(String light) {
    String eye = larger.map(Site::word).orElse("neither");
    return "in " + light + " light " + difference + " mm, larger: " + eye;
  }
}
