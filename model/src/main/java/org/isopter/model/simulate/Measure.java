package org.isopter.model.simulate;

/**
 * A number that an eye has, as far as it is drawn from a distribution.
 *
 * <p>The likeness is the correlation of the two eyes of a person; retest is the standard deviation
 * of what a later visit adds by chance.
 */
public enum Measure {
  ACUITY("Distance acuity through the best lens, logMAR", -0.2, 3, 0.6, 0.06),
  PRESSURE("Intraocular pressure, mmHg", 6, 45, 0.9, 1.5),
  CUP("Vertical cup-disc ratio", 0, 0.95, 0.9, 0.03),
  SPHERE("Sphere, D", -12, 8, 0.95, 0.15),
  CYLINDER("Cylinder, D", -4, -0.25, 0.7, 0.1),
  PUPIL("Pupil in room light, mm", 2.5, 6, 1, 0.3),
  PLATES("Colour plates read of 15", 0, 15, 0.5, 0.5),
  RED("Red saturation beside the fellow eye, %", 10, 100, 0, 5),
  MEAN_DEVIATION("Mean deviation of the field, dB", -30, 3, 0.6, 0.8),
  LID("Margin reflex distance without ptosis, mm", 3, 5, 0.9, 0.2);

  private final String title;
  private final double least;
  private final double most;
  private final double likeness;
  private final double retest;

  Measure(String title, double least, double most, double likeness, double retest) {
    this.title = title;
    this.least = least;
    this.most = most;
    this.likeness = likeness;
    this.retest = retest;
  }

  /** Returns what is measured and its unit. */
  public String title() {
    return title;
  }

  /** Returns the least value that is drawn. */
  public double least() {
    return least;
  }

  /** Returns the greatest value that is drawn. */
  public double most() {
    return most;
  }

  /** Returns the correlation of the two eyes of a person. */
  public double likeness() {
    return likeness;
  }

  /** Returns the standard deviation that a later visit adds. */
  public double retest() {
    return retest;
  }

  /** Returns the value within the ends. */
  double cut(double value) {
    return Math.max(least, Math.min(most, value));
  }
}
