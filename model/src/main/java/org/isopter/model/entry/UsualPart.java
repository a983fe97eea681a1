package org.isopter.model.entry;

import java.util.List;
import org.isopter.model.finding.Finding;

/**
 * Findings any of which says that a part of an examination was done.
 *
 * @param title what a letter calls it where it is missing; empty where nothing is missed
 * @param findings the findings
 */
record UsualPart(String title, List<Finding<?>> findings) {

  static UsualPart expected(String title, Finding<?>... findings) {
    return new UsualPart(title, List.of(findings));
  }

  static UsualPart optional(Finding<?>... findings) {
    return new UsualPart("", List.of(findings));
  }
}
