package org.isopter.model.clinical.acuity;

/** How one acuity stands to another. */
public enum AcuityOrder {
  BETTER,
  EQUAL,
  WORSE;

  /** Returns how the other stands to the one. */
  public AcuityOrder reversed() {
    return this == BETTER ? WORSE : this == WORSE ? BETTER : EQUAL;
  }
}
