package org.isopter.cli;

/** What a line of invented examinations is. */
enum GenerateForm {
  NDJSON("ndjson"),
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
