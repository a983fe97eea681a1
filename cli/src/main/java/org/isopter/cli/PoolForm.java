package org.isopter.cli;

import java.util.EnumSet;
import java.util.Set;

/** The forms of what is pooled: records, or FHIR. */
enum PoolForm {
  YAML(Form.YAML),
  JSON(Form.JSON),
  XML(Form.XML),
  NDJSON(Form.NDJSON);

  /** The forms as those of any input. */
  static final Set<Form> ALL = EnumSet.of(Form.YAML, Form.JSON, Form.XML, Form.NDJSON);

  private final Form form;

  PoolForm(Form form) {
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
