package org.isopter.cli;

/** The forms of a record. */
enum RecordForm {
  YAML(Form.YAML),
  JSON(Form.JSON),
  NDJSON(Form.NDJSON);

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
