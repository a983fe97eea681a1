package org.isopter.model.clinical.field;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** An index of a visual field test, with what it means. */
public enum PerimetryIndex {
  VISUAL_FIELD_INDEX(
      0,
      100,
      "% (100 is that of the age, 0 is perimetric blindness)",
      "J Clin Diagn Res, article 11620"),
  PATTERN_STANDARD_DEVIATION(
      0, 99, "dB (localised loss; it falls again in advanced loss)", "Br J Ophthalmol, footnote");

  private final int least;
  private final int most;
  private final String meaning;
  private final Citation source;

  PerimetryIndex(int least, int most, String meaning, String source) {
    this.least = least;
    this.most = most;
    this.meaning = meaning;
    this.source = new Citation(source);
  }

  /** Returns what a value of the index says, or a refusal for a number that it cannot have. */
  public Result<Statement> of(BigDecimal value) {
    boolean possible =
        value.compareTo(BigDecimal.valueOf(least)) >= 0
            && value.compareTo(BigDecimal.valueOf(most)) <= 0;
    return possible
        ? Result.ok(
            StatementBuilder.of("perimetry.index", source, Concept.word(this) + " " + value)
                .say(Certainty.COMPUTED, "The index is " + value + " " + meaning + "."))
        : Result.refused(Fault.of("", value.toString(), least + " to " + most));
  }
}
