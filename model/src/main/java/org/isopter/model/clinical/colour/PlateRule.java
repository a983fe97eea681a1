package org.isopter.model.clinical.colour;

import java.util.Map;
import java.util.Optional;
import org.isopter.model.finding.Citation;

/** A published way to judge a score of colour plates. */
public enum PlateRule {
  /** The maker's instructions; between the two limits the score is unclassified. */
  MANUFACTURER(
      "instruction sheet of the maker: 14 plates as quoted in \"Interpretation of Ishihara Color"
          + " Plates\", oculistmd; 24 and 38 plates from memory",
      PlateVerdict.NORMAL,
      PlateVerdict.DEFICIENT,
      Map.of(
          PlateEdition.PLATES_14, new Limits(10, 7),
          PlateEdition.PLATES_24, new Limits(13, 9),
          PlateEdition.PLATES_38, new Limits(17, 13))),
  /** Pilots in the United States. */
  FAA(
      "FAA guide for aviation medical examiners, item 52; 38 plates from memory",
      PlateVerdict.PASS,
      PlateVerdict.FAIL,
      Map.of(
          PlateEdition.PLATES_14, new Limits(6, 5),
          PlateEdition.PLATES_24, new Limits(9, 8),
          PlateEdition.PLATES_38, new Limits(13, 12))),
  /** Pilots in Australia: no more than two errors. */
  CASA(
      "Australian rule as quoted by pilots, not seen at its source",
      PlateVerdict.PASS,
      PlateVerdict.FAIL,
      Map.of(PlateEdition.PLATES_24, new Limits(13, 12)));

  /**
   * The limits of an edition.
   *
   * @param pass the least number of plates that passes
   * @param fail the greatest number that fails
   */
  record Limits(int pass, int fail) {}

  private final Citation source;
  private final PlateVerdict passed;
  private final PlateVerdict failed;
  private final Map<PlateEdition, Limits> limits;

  PlateRule(
      String source, PlateVerdict passed, PlateVerdict failed, Map<PlateEdition, Limits> limits) {
    this.source = new Citation(source);
    this.passed = passed;
    this.failed = failed;
    this.limits = limits;
  }

  /** Returns where the rule was found. */
  public Citation source() {
    return source;
  }

  /** Returns the rule's limits for an edition, or nothing where it prints none. */
  Optional<Limits> limits(PlateEdition edition) {
    return Optional.ofNullable(limits.get(edition));
  }

  PlateVerdict verdict(Limits edge, int correct) {
    if (correct >= edge.pass()) {
      return passed;
    }
    return correct <= edge.fail() ? failed : PlateVerdict.UNCLASSIFIED;
  }
}
