package org.isopter.cli;

import java.util.EnumSet;
import java.util.Set;

/** The forms of a FHIR resource. */
enum FhirForm {
  JSON(Form.JSON),
  XML(Form.XML),
  NDJSON(Form.NDJSON);

  /** The forms as those of any input. */
  static final Set<Form> ALL = EnumSet.of(Form.JSON, Form.XML, Form.NDJSON);

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
