package org.isopter.task.generate;

/** What a line of invented examinations is. */
public enum GenerateForm {
  /** A record. */
  NDJSON("ndjson"),
  /** A FHIR R4 collection. */
  FHIR_NDJSON("fhir-ndjson");

  private final String word;

  GenerateForm(String word) {
    this.word = word;
  }

  @Override
  public String toString() {
    return word;
  }
}
