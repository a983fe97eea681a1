package org.isopter.model.clinical.colour;

import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.Colours.Plates;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** A score of Ishihara plates judged by a named rule for its edition. */
public final class ColourPlates {

  private static final String ID = "colour.plates";

  private static final String NONE_READ =
      "The test cannot be judged: no plate was read, not even the first, which everybody reads who"
          + " sees it.";

  private ColourPlates() {}

  /**
   * Returns the rule's verdict.
   *
   * <p>Refused when the number of plates shown is not the number that the edition scores (11 of 14,
   * 15 of 24, 21 of 38), or more were read than shown. Withheld for other plates, for an edition
   * that is not stated, and where the rule prints no limits for it.
   */
  public static Result<Answer<PlateVerdict>> verdict(Plates plates, PlateRule rule) {
    StatementBuilder topic =
        StatementBuilder.of(ID, rule.source(), fact(plates), "rule " + Concept.word(rule));
    Optional<PlateEdition> edition = plates.edition().flatMap(PlateEdition::of);
    if (plates.test() != ColourTest.ISHIHARA || edition.isEmpty()) {
      return Result.ok(topic.withheld("The rule needs Ishihara plates of a stated edition."));
    }
    return scored(plates, edition.get())
        .map(
            correct ->
                correct == 0
                    ? topic.withheld(NONE_READ)
                    : rule.limits(edition.get())
                        .<Answer<PlateVerdict>>map(
                            limits -> given(topic, plates, rule.verdict(limits, correct)))
                        .orElseGet(
                            () -> topic.withheld("The rule prints no limits for this edition.")));
  }

  /** Says that a test in which the first, plain plate was not read cannot be judged. */
  public static Answer<PlateVerdict> firstPlateMissed(Plates plates) {
    return StatementBuilder.of(ID, Citation.COMMON_PRACTICE, fact(plates), "first plate not read")
        .withheld(
            "The test cannot be judged: the plate that everybody reads was not read (acuity,"
                + " comprehension or feigning).");
  }

  private static Result<Integer> scored(Plates plates, PlateEdition edition) {
    if (plates.shown() == edition.scored() && plates.correct() <= plates.shown()) {
      return Result.ok(plates.correct());
    }
    return Result.refused(
        new Fault(
            "value",
            plates.correct() + " of " + plates.shown(),
            "at most %s of the %s scored plates of the edition with %s"
                .formatted(edition.scored(), edition.scored(), edition.plates()),
            "count only the scored plates"));
  }

  private static Answer<PlateVerdict> given(
      StatementBuilder topic, Plates plates, PlateVerdict verdict) {
    String text = "%s: %s by this rule.".formatted(fact(plates), verdict.words());
    return topic.given(verdict, Certainty.BY_RULE, text);
  }

  private static String fact(Plates plates) {
    String edition = plates.edition().map(count -> ", edition of " + count).orElse("");
    return plates.correct() + " of " + plates.shown() + " plates" + edition;
  }
}
