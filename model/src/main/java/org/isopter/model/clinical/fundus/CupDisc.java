package org.isopter.model.clinical.fundus;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;

/** A vertical cup-disc ratio against the size of its disc. */
public final class CupDisc {

  /**
   * Percentiles of the ratio in eyes without glaucoma.
   *
   * @param median the 50th percentile
   * @param limit the 97.5th percentile
   */
  public record Percentiles(BigDecimal median, BigDecimal limit) {}

  private static final Citation CROWSTON = new Citation("Crowston 2004, Br J Ophthalmol 88:766");
  private static final Citation GARWAY_HEATH =
      new Citation("Garway-Heath 1998, Br J Ophthalmol 82:1118");

  private static final Map<BigDecimal, Percentiles> BY_DIAMETER = new TreeMap<>();

  static {
    row("1.2", "0.33", "0.60");
    // As printed: the limit of 1.3 mm is below that of 1.2 mm.
    row("1.3", "0.35", "0.59");
    row("1.4", "0.39", "0.67");
    row("1.5", "0.42", "0.68");
    row("1.6", "0.45", "0.70");
    row("1.7", "0.50", "0.71");
    row("1.8", "0.52", "0.74");
    row("1.9", "0.55", "0.75");
  }

  private CupDisc() {}

  private static void row(String diameter, String median, String limit) {
    Percentiles percentiles = new Percentiles(new BigDecimal(median), new BigDecimal(limit));
    BY_DIAMETER.put(new BigDecimal(diameter), percentiles);
  }

  /**
   * Returns the percentiles printed for a disc; withheld without a size and outside the table.
   *
   * @param diameter the vertical diameter of the disc in mm; it is rounded to 0.1, and nothing is
   *     interpolated
   */
  public static Answer<Percentiles> percentiles(Optional<BigDecimal> diameter) {
    StatementBuilder topic = topic(diameter);
    return row(diameter)
        .map(
            row ->
                topic.given(
                    row,
                    Certainty.BY_RULE,
                    "For a disc of this size half the ratios are up to %s, 97.5 %% up to %s."
                        .formatted(row.median(), row.limit())))
        .orElseGet(() -> topic.withheld(NO_ROW));
  }

  /** Says whether a ratio is above the 97.5th percentile for its disc; withheld as above. */
  public static Answer<Boolean> isAboveLimit(BigDecimal ratio, Optional<BigDecimal> diameter) {
    StatementBuilder topic = topic(diameter).with("vertical cup-disc ratio " + ratio);
    return row(diameter)
        .map(row -> row.limit())
        .map(
            limit -> {
              boolean above = ratio.compareTo(limit) > 0;
              String relation = above ? "is above" : "is not above";
              return topic.given(
                  above,
                  Certainty.BY_RULE,
                  "The cup-disc ratio %s the 97.5th percentile for its disc, %s%s."
                      .formatted(relation, limit, above ? "" : "; that excludes no damage"));
            })
        .orElseGet(() -> diameter.isPresent() ? topic.withheld(NO_ROW) : aboveEvery(topic, ratio));
  }

  /** What is above the limit of every size printed is so for a disc that was not measured. */
  private static Answer<Boolean> aboveEvery(StatementBuilder topic, BigDecimal ratio) {
    BigDecimal most =
        BY_DIAMETER.values().stream()
            .map(Percentiles::limit)
            .max(BigDecimal::compareTo)
            .orElseThrow();
    return ratio.compareTo(most) > 0
        ? topic.given(
            true,
            Certainty.BY_RULE,
            "The cup-disc ratio is above the 97.5th percentile of every size of disc in the table, "
                + most
                + " at most.")
        : topic.withheld(NO_ROW);
  }

  /**
   * Returns the ratio expected of a disc, {@code (-1.31 + 1.194 d) / d}, to 0.01; withheld where
   * the formula leaves the range 0 to 1.
   */
  public static Answer<BigDecimal> expected(BigDecimal diameter) {
    StatementBuilder topic =
        StatementBuilder.of("disc.expected-cup", GARWAY_HEATH, "disc diameter " + diameter + " mm");
    double ratio = diameter.signum() > 0 ? 1.194 - 1.31 / diameter.doubleValue() : -1;
    if (ratio < 0 || ratio > 1) {
      return topic.withheld("The formula gives no ratio for a disc of this size.");
    }
    BigDecimal rounded = Numbers.round(ratio, 2);
    return topic.given(
        rounded,
        Certainty.BY_RULE,
        "The ratio expected of a disc of this size is " + rounded + ".");
  }

  private static final String NO_ROW =
      "Limits depend on the size of the disc, and are not published for this one.";

  private static Optional<Percentiles> row(Optional<BigDecimal> diameter) {
    return diameter.flatMap(size -> Optional.ofNullable(BY_DIAMETER.get(Numbers.round(size, 1))));
  }

  private static StatementBuilder topic(Optional<BigDecimal> diameter) {
    String size = diameter.map(mm -> mm + " mm").orElse("not recorded");
    return StatementBuilder.of("disc.cup", CROWSTON, "disc diameter " + size);
  }
}
