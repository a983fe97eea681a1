package org.isopter.task.input;

import java.util.EnumSet;
import java.util.Set;

/** The forms of a record. */
public enum RecordForm {
  YAML(InputForm.YAML),
  JSON(InputForm.JSON),
  NDJSON(InputForm.NDJSON);

  /** The forms as those of any input. */
  public static final Set<InputForm> ALL =
      EnumSet.of(InputForm.YAML, InputForm.JSON, InputForm.NDJSON);

  private final InputForm form;

  RecordForm(InputForm form) {
    this.form = form;
  }

  public InputForm form() {
    return form;
  }

  @Override
  public String toString() {
    return form.toString();
  }
}
