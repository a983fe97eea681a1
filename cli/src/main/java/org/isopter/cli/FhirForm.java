package org.isopter.cli;

/** The forms of a FHIR resource. */
enum FhirForm {
  JSON(Form.JSON),
  XML(Form.XML),
  NDJSON(Form.NDJSON);

  private final Form form;

  FhirForm(Form form) {
    this.form = form;
  }

  Form form() {
    return form;
  }

  @Override
  public String toString() {
    return form.toString();
  }
}
