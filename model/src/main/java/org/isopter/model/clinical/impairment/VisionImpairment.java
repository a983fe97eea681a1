package org.isopter.model.clinical.impairment;

import java.util.Optional;

/** A category of distance vision impairment, in the numbering of ICD-11. */
public enum VisionImpairment {
  NONE(0, 0, "no vision impairment", "6/12 0.5 20/40 4/8 0.3"),
  MILD(1, 0, "mild", "6/18 0.3 20/70 4/12 0.5"),
  MODERATE(2, 1, "moderate", "6/60 0.1 20/200 4/40 1.0"),
  SEVERE(3, 2, "severe", "3/60 0.05 20/400 4/80 1.3"),
  BLINDNESS_TO_ONE_SIXTIETH(4, 3, "blindness", "1/60 0.02 20/1200 4/240 1.8"),
  BLINDNESS_TO_LIGHT(5, 4, "blindness"),
  BLINDNESS_NO_LIGHT(6, 5, "blindness"),
  UNDETERMINED(9, 9, "undetermined or unspecified");

  private final int number;
  private final int icd10;
  private final String title;
  private final Optional<VisionEdge> edge;

  VisionImpairment(int number, int icd10, String title) {
    this(number, icd10, title, Optional.empty());
  }

  VisionImpairment(int number, int icd10, String title, String edge) {
    this(number, icd10, title, Optional.of(VisionEdge.parse(edge)));
  }

  VisionImpairment(int number, int icd10, String title, Optional<VisionEdge> edge) {
    this.number = number;
    this.icd10 = icd10;
    this.title = title;
    this.edge = edge;
  }

  /** Returns the category's number in ICD-11 (9 from memory). */
  public int number() {
    return number;
  }

  /**
   * Returns the category's number in ICD-10 (coding note of H54, as BMC Res Notes 2016,
   * s13104-016-1870-4, table 8 prints it); mild and none share 0.
   */
  public int icd10() {
    return icd10;
  }

  /** Returns the category's name; the three of blindness share one. */
  public String title() {
    return title;
  }

  /** Returns the worst acuity of the category; empty where it is no line of a chart. */
  public Optional<VisionEdge> edge() {
    return edge;
  }

  @Override
  public String toString() {
    return title + " (category " + number + ")";
  }
}
