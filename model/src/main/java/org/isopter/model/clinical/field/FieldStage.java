package org.isopter.model.clinical.field;

import java.math.BigDecimal;
import java.util.List;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;

/**
 * A published way to stage glaucomatous field loss by the mean deviation. Each rule set has further
 * criteria beside the mean deviation; the statement names them.
 */
public enum FieldStage {
  /** Glaucoma Staging System, a published modification of Hodapp, Parrish and Anderson. */
  MILLS_2006(
      "Br J Ophthalmol, table of the Mills 2006 Glaucoma Staging System; stage 4 from memory",
      "stage 1 needs the point, pattern deviation or hemifield criterion as well",
      List.of(
          new Band("0", true, "stage 0 (no criterion met)"),
          new Band("-6", true, "stage 1 early"),
          new Band("-12", true, "stage 2 moderate"),
          new Band("-20", true, "stage 3 advanced"),
          new Band("-99", true, "stage 4 severe"))),
  /** The original grouping. */
  HODAPP_1993(
      "from memory: Hodapp, Parrish and Anderson 1993",
      "point counts and the central 5 degrees count as well",
      List.of(
          new Band("-6", false, "early"),
          new Band("-12", true, "moderate"),
          new Band("-99", true, "severe")));

  private final Citation source;
  private final String beside;
  private final List<Band> bands;

  FieldStage(String source, String beside, List<Band> bands) {
    this.source = new Citation(source);
    this.beside = beside;
    this.bands = bands;
  }

  /**
   * Returns the stage by the mean deviation alone; withheld below -99 dB.
   *
   * @param meanDeviation the mean deviation in dB; loss is negative
   */
  public Answer<String> of(BigDecimal meanDeviation) {
    StatementBuilder topic =
        StatementBuilder.of(
            "field.stage",
            source,
            "mean deviation " + meanDeviation + " dB",
            "rule " + Concept.word(this));
    return bands.stream()
        .filter(band -> band.holds(meanDeviation))
        .findFirst()
        .<Answer<String>>map(
            band ->
                topic.given(
                    band.stage(),
                    Certainty.BY_RULE,
                    "By the mean deviation alone: %s; %s.".formatted(band.stage(), beside)))
        .orElseGet(() -> topic.withheld("The rule has no stage for this mean deviation."));
  }

  private record Band(BigDecimal edge, boolean included, String stage) {
    Band(String edge, boolean included, String stage) {
      this(new BigDecimal(edge), included, stage);
    }

    boolean holds(BigDecimal meanDeviation) {
      int above = meanDeviation.compareTo(edge);
      return above > 0 || (above == 0 && included);
    }
  }
}
