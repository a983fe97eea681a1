package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Concept;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * A published way to stand a number in for vision too low for a chart. The published numbers
 * disagree, so that a number is derived only under a convention that the caller names, only for the
 * distance it was published for, and never for light perception or less.
 */
public enum LowVisionConvention {
  /** Measured in 2006: counting fingers at 30 cm, hand movements. */
  SCHULZE_BONSEL_2006(
      "Schulze-Bonsel 2006, IOVS 47:1236",
      List.of(
          new Row(LowVision.COUNTING_FINGERS, metres("0.30"), "1.85"),
          new Row(LowVision.HAND_MOVEMENTS, Optional.empty(), "2.30")),
      Map.of()),
  /** Measured in 2009 with a screen test at 50 cm. */
  LANGE_2009(
      "Lange, Feltgen, Junker, Schulze-Bonsel and Bach 2009, Graefes Arch 247:137",
      List.of(
          new Row(LowVision.COUNTING_FINGERS, metres("0.50"), "1.98"),
          new Row(LowVision.HAND_MOVEMENTS, metres("0.50"), "2.28")),
      Map.of()),
  /** A convention that takes a finger for a letter of a 20/200 line. */
  HOLLADAY_2004(
      "Holladay, note under the conversion chart that the J Cataract Refract Surg prints: 20/2000"
          + " and 20/20000 at 2 feet",
      List.of(
          new Row(LowVision.COUNTING_FINGERS, metres("0.6096"), "2.00"),
          new Row(LowVision.HAND_MOVEMENTS, metres("0.6096"), "3.00")),
      Map.of()),
  /** The row of the World Health Organization, which prints 1/60 beside 0.02 and 5/300. */
  WHO(
      "ICD-10 H54 coding note; its row is not of one piece: 1/60 is 0.0167, beside it stands 0.02",
      List.of(new Row(LowVision.COUNTING_FINGERS, metres("1"), "1.78")),
      Map.of()),
  /** The values that surveys of avoidable blindness put in for their analysis. */
  SURVEY_ANALYSIS(
      "survey analysis values of the rapid assessment of avoidable blindness",
      List.of(),
      Map.of(LowVision.LIGHT_PERCEPTION, "3.0", LowVision.NO_LIGHT_PERCEPTION, "4.0")),
  /** What trials put in; they differ, and it is their protocol that decides. */
  TRIALS(
      "from memory: trial conventions, 2.7 attributed to M. Bach",
      List.of(),
      Map.of(
          LowVision.LIGHT_PERCEPTION, "2.7 or 2.8", LowVision.NO_LIGHT_PERCEPTION, "2.9 or 3.0"));

  private final Citation source;
  private final List<Row> rows;
  private final Map<LowVision, String> printed;

  LowVisionConvention(String source, List<Row> rows, Map<LowVision, String> printed) {
    this.source = new Citation(source);
    this.rows = rows;
    this.printed = printed;
  }

  /** Returns where the convention is published. */
  public Citation source() {
    return source;
  }

  /**
   * Returns the logMAR that stands in for the low vision, as published.
   *
   * <p>Withheld where the convention publishes none for the category at the distance, and for light
   * perception or none: what is printed for those is a stand-in for arithmetic, and the statement
   * quotes it.
   */
  public Answer<BigDecimal> logMar(Acuity.Low low) {
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.low-vision", source, "acuity " + low, "convention " + Concept.word(this));
    return rows.stream()
        .filter(row -> row.holds(low))
        .findFirst()
        .<Answer<BigDecimal>>map(row -> given(topic, low, row.logMar()))
        .orElseGet(() -> topic.withheld(low + " has no number here. " + why(low)));
  }

  private static Answer<BigDecimal> given(StatementBuilder topic, Acuity.Low low, String logMar) {
    String text = "%s stands for %s logMAR under this convention.".formatted(low, logMar);
    return topic.given(new BigDecimal(logMar), Certainty.BY_CONVENTION, text);
  }

  private String why(Acuity.Low low) {
    String standIn = printed.getOrDefault(low.category(), "");
    if (!standIn.isEmpty()) {
      return "No acuity exists; the convention prints " + standIn + " as a stand-in only.";
    }
    return low.distance().isEmpty() && low.category() == LowVision.COUNTING_FINGERS
        ? "The distance is missing."
        : "The convention publishes none for this category at this distance.";
  }

  private static Optional<Quantity> metres(String digits) {
    return Optional.of(Quantity.of(digits, Unit.METRE));
  }

  private record Row(LowVision category, Optional<Quantity> distance, String logMar) {
    boolean holds(Acuity.Low low) {
      return low.category() == category
          && (distance.isEmpty() ? low.distance().isEmpty() : at(low));
    }

    private boolean at(Acuity.Low low) {
      String published = distance.map(one -> one.value().toPlainString()).orElse("0");
      return low.distance().filter(seen -> Numbers.isMetres(seen, published)).isPresent();
    }
  }
}
