package org.isopter.model.compare;

import java.util.Optional;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/**
 * What became of one finding between two examinations.
 *
 * @param finding what was examined
 * @param site which eye, or both together
 * @param kind whether it is in both, and the same
 * @param before what was said before, in plain words; empty where nothing was
 * @param after what is said now, in plain words; empty where nothing is
 * @param by the later number less the earlier, where both are numbers of one unit
 * @param verdict what the difference amounts to against a published limit, where there is one
 */
public record Change(
    Finding<?> finding,
    Site site,
    Kind kind,
    String before,
    String after,
    Optional<Quantity> by,
    Optional<Statement> verdict) {

  /** Whether a finding is in both examinations, and the same. */
  public enum Kind {
    SAME,
    DIFFERENT,
    ONLY_BEFORE,
    ONLY_NOW;

    /** Returns the kind in a word or two. */
    public String words() {
      return switch (this) {
        case SAME -> "unchanged";
        case DIFFERENT -> "different";
        case ONLY_BEFORE -> "not in the later record";
        case ONLY_NOW -> "not in the earlier record";
      };
    }
  }
}
