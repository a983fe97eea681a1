package org.isopter.model.clinical;

import java.util.Map;

/** The rows of the check tables that no test goes through, and why. */
final class Omissions {

  private static final Map<CheckTable, Map<String, String>> WHY =
      Map.of(
          CheckTable.NORMAL_RANGES,
          Map.of(
              "CCT", "the record has no corneal thickness, and corrects no pressure for it",
              "ptosis amount", "two schemes of grading disagree; no grade is derived",
              "pupil by age in dark", "no statement is made of age",
              "lens power step", "a step of a device, no range of a finding",
              "normal field, large bright target", "no statement compares an extent with normal"));

  private Omissions() {}

  /** Returns the rows left out of a table, by their first cell, and why. */
  static Map<String, String> of(CheckTable table) {
    return WHY.getOrDefault(table, Map.of());
  }
}
