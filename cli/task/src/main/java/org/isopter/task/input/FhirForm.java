package org.isopter.task.input;

import java.util.EnumSet;
import java.util.Set;

/** The forms of a FHIR resource. */
public enum FhirForm {
  JSON(InputForm.JSON),
  XML(InputForm.XML),
  NDJSON(InputForm.NDJSON);

  /** The forms as those of any input. */
  public static final Set<InputForm> ALL =
      EnumSet.of(InputForm.JSON, InputForm.XML, InputForm.NDJSON);

  private final InputForm form;

  FhirForm(InputForm form) {
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
