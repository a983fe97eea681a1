package org.isopter.cli;

import java.util.EnumSet;
import java.util.Set;

/** The forms of a record. */
enum RecordForm {
  YAML(Form.YAML),
  JSON(Form.JSON),
  NDJSON(Form.NDJSON);

  /** The forms as those of any input. */
  static final Set<Form> ALL = EnumSet.of(Form.YAML, Form.JSON, Form.NDJSON);

  private final Form form;

  RecordForm(Form form) {
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
