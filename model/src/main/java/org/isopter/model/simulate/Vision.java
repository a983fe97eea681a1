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

  /** Returns the acuity in logMAR through a pupil of so many mm, with so much blur in dioptres. */
  static double acuity(double best, double blur, double pupil) {
    double least = Math.pow(10, best);
    double spread = Relation.BLUR.number() * pupil * blur;
    return Math.log10(Math.sqrt(least * least + spread * spread));
  }

  /**
   * Returns the blur of a refraction in dioptres: the length of its power vector, once a
   * far-sighted eye has accommodated as far as it does.
   */
  static double blur(double sphere, double cylinder, double age) {
    double amplitude =
        Math.max(0, Relation.ACCOMMODATION.number() - Relation.ACCOMMODATION_LOST.number() * age);
    double mean = sphere + cylinder / 2;
    double left =
        mean > 0 ? Math.max(0, mean - amplitude * Relation.ACCOMMODATION_USED.number()) : mean;
    return Math.hypot(left, cylinder / 2);
  }
}
