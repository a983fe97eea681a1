package org.isopter.model.answer.sight;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The chart or card that acuity was measured on. */
public enum Chart implements Concept {
  SNELLEN(Code.snomed("400913005", "Snellen chart")),
  ETDRS(
      Code.snomed(
          "400914004",
          "Early Treatment of Diabetic Retinopathy Study visual acuity chart (physical object)")),
  LOGMAR("LogMAR chart other than ETDRS"),
  LANDOLT("Landolt ring chart"),
  TUMBLING_E("Tumbling E chart"),
  SINGLE_LETTERS("Single letters"),
  PICTURES("Picture chart"),
  NEAR_CARD(Code.snomed("418295001", "Near card (physical object)")),
  OTHER(Code.snomed("421763006", "Visual acuity chart (physical object)"));

  private final Code code;

  Chart(String display) {
    this.code = Concept.local(this, display);
  }

  Chart(Code code) {
    this.code = code;
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  @Override
  public Code code() {
    return code;
  }
}
