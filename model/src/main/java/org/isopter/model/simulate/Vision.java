package org.isopter.model.simulate;

/** How much an eye still sees, the best first. */
enum Vision {
  CHART(1.1),
  FINGERS(1.7),
  HAND(2.3),
  LIGHT(2.7),
  NONE(Double.MAX_VALUE);

  private final double worst;

  Vision(double worst) {
    this.worst = worst;
  }

  /** Returns what an eye of this acuity in logMAR sees. */
  static Vision of(double logMar) {
    for (Vision vision : values()) {
      if (logMar <= vision.worst) {
        return vision;
      }
    }
    return NONE;
  }
}
