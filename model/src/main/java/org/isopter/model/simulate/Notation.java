package org.isopter.model.simulate;

/** How acuity is written at a visit. */
public enum Notation {
  METRIC,
  IMPERIAL,
  DECIMAL,
  LOGMAR,
  LETTERS
}
