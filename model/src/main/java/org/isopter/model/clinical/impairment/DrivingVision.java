package org.isopter.model.clinical.impairment;

import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Concept;

/**
 * Whether a figure that a driving rule prints is reached. It is one figure of a rule, never fitness
 * to drive, and every statement says to check local rules.
 */
public final class DrivingVision {

  /**
   * The extent of the field of both eyes together, in degrees.
   *
   * @param horizontal from left to right
   * @param left to the left of fixation
   * @param right to the right of fixation
   * @param up above fixation
   * @param down below fixation
   * @param centralDefect whether there is a defect within the central 20 degrees
   */
  public record Extent(
      int horizontal, int left, int right, int up, int down, boolean centralDefect) {

    /** Returns the extent in words. */
    @Override
    public String toString() {
      String centre = centralDefect ? "with" : "without";
      return "field %s deg across, %s left, %s right, %s up, %s down, %s a central defect"
          .formatted(horizontal, left, right, up, down, centre);
    }
  }

  /** What a driving rule prints of the field. */
  public enum FieldRule {
    /** At least 120 degrees across and 50 to each side, no significant defect in the central 20. */
    UK_GROUP_1(
        0,
        "gov.uk, visual disorders: guidance on fitness to drive; central defect: as gpnotebook"
            + " prints it, \"Driving (and visual field defects)\""),
    /** The same, 20 degrees up and down, and nothing in the central 20. */
    EU_GROUP_1(
        20, "directive 2009/113/EC, OJ L 223 p. 31, Annex; as quoted in PMC9561926, table 2");

    private final int upAndDown;
    private final Citation source;

    FieldRule(int upAndDown, String source) {
      this.upAndDown = upAndDown;
      this.source = new Citation(source);
    }

    /** Nothing where it hangs on whether a central defect is significant, as one rule says. */
    private Optional<Boolean> reachedBy(Extent field) {
      boolean across = field.horizontal() >= 120 && field.left() >= 50 && field.right() >= 50;
      boolean high = field.up() >= upAndDown && field.down() >= upAndDown;
      boolean wide = across && high;
      return wide && field.centralDefect() && this == UK_GROUP_1
          ? Optional.empty()
          : Optional.of(wide && !field.centralDefect());
    }
  }

  private static final String LOCAL = " Check local rules: it is one figure of a rule, no more.";

  private DrivingVision() {}

  /**
   * Says whether the acuity with both eyes open, or of the only eye, reaches the rule's figure.
   *
   * <p>Withheld where the acuity has no logMAR, and where letters were missed on the line that the
   * rule names.
   */
  public static Answer<Boolean> acuity(DrivingRule rule, AcuityReading both) {
    StatementBuilder topic = topic(rule.source(), rule, "acuity " + PresentingAcuity.fact(both));
    return answer(
        topic, rule.worse().isPresent() ? Optional.empty() : reaches(rule.better(), both));
  }

  /**
   * Says whether the acuities of the better and of the worse eye reach the rule's two figures.
   *
   * <p>Withheld as above, and for a rule that has no figure for the worse eye.
   */
  public static Answer<Boolean> acuity(
      DrivingRule rule, AcuityReading better, AcuityReading worse) {
    StatementBuilder topic =
        topic(
            rule.source(),
            rule,
            "better eye " + PresentingAcuity.fact(better),
            "worse eye " + PresentingAcuity.fact(worse));
    Optional<Boolean> first = reaches(rule.better(), better);
    Optional<Boolean> second = rule.worse().flatMap(edge -> reaches(edge, worse));
    return answer(topic, first.flatMap(one -> second.map(two -> one && two)));
  }

  /**
   * Says whether a field reaches what the rule prints.
   *
   * <p>Withheld for a central defect where the rule speaks of significant ones alone.
   */
  public static Answer<Boolean> field(FieldRule rule, Extent field) {
    return answer(topic(rule.source, rule, field.toString()), rule.reachedBy(field));
  }

  private static Optional<Boolean> reaches(VisionEdge edge, AcuityReading reading) {
    Acuity acuity = reading.acuity();
    if (acuity instanceof Acuity.Low) {
      return Optional.of(false);
    }
    boolean full = edge.isReachedBy(acuity, 0);
    boolean onTheLine = full && !edge.isReachedBy(acuity, AcuityScale.missed(reading));
    boolean stated = AcuityScale.logMar(acuity).isPresent() && !onTheLine;
    return stated ? Optional.of(full) : Optional.empty();
  }

  private static StatementBuilder topic(Citation source, Enum<?> rule, String... facts) {
    return new StatementBuilder("driving.figure", source, List.of(facts))
        .with("rule " + Concept.word(rule));
  }

  private static Answer<Boolean> answer(StatementBuilder topic, Optional<Boolean> reached) {
    return reached
        .map(
            yes ->
                topic.given(
                    yes,
                    Certainty.BY_RULE,
                    "The figure of the rule is " + (yes ? "" : "not ") + "reached." + LOCAL))
        .orElseGet(() -> topic.withheld("Whether the figure is reached cannot be told." + LOCAL));
  }
}
