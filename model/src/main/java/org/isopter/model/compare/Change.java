package org.isopter.model.compare;

import java.util.Optional;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/**
 * What became of one measurement between two examinations.
 *
 * @param finding what was examined
 * @param site which eye, or both together
 * @param kind whether it is in both, and the same
 * @param before what the earlier record says; empty where it says nothing
 * @param after what the later record says; empty where it says nothing
 * @param by the difference, later less earlier, where both are numbers found in the same way
 * @param verdict whether the difference exceeds a published limit, where one is carried here
 */
public record Change(
    Finding<?> finding,
    Site site,
    Kind kind,
    String before,
    String after,
    Optional<Quantity> by,
    Optional<Statement> verdict) {

  /** Whether a measurement is in both examinations, and the same. */
  public enum Kind {
    SAME,
    DIFFERENT,
    OTHER_TECHNIQUE,
    UNDER_DROPS,
    ONLY_BEFORE,
    ONLY_NOW;

    /** Returns the kind in a few words. */
    public String words() {
      return switch (this) {
        case SAME -> "unchanged";
        case DIFFERENT -> "different";
        case OTHER_TECHNIQUE -> "found by another technique, or by one that is not stated";
        case UNDER_DROPS -> "not compared, for drops that widen the pupil are recorded";
        case ONLY_BEFORE -> "not repeated in the later record";
        case ONLY_NOW -> "not in the earlier record";
      };
    }
  }
}
