package org.isopter.model.simulate;

import java.util.Optional;
import org.isopter.model.value.Absence;

/** A step of the examination: how often it is not mentioned, and how often said to be absent. */
public enum VisitStep {
  ACUITY(0, 0.01, 0.005, 0.015),
  NEAR(0.45, 0.05, 0, 0.01),
  PUPILS(0.05, 0.02, 0, 0.01),
  DEFECT(0.1, 0.04, 0, 0.02),
  PLATES(0.35, 0.08, 0.01, 0.03),
  RED(0.5, 0.05, 0.005, 0.01),
  CONFRONTATION(0.15, 0.06, 0.005, 0.04),
  PERIMETRY(0.1, 0.1, 0.02, 0.05),
  DISC(0.08, 0.05, 0.02, 0.04),
  PRESSURE(0.06, 0.04, 0.02, 0.02),
  REFRACTION(0.4, 0.05, 0.005, 0.02),
  MOVEMENTS(0.3, 0.03, 0, 0.02),
  LIDS(0.4, 0.03, 0, 0.005),
  LENS(0.4, 0.03, 0.005, 0.01);

  private final double silent;
  private final double notDone;
  private final double refused;
  private final double unable;

  VisitStep(double silent, double notDone, double refused, double unable) {
    this.silent = silent;
    this.notDone = notDone;
    this.refused = refused;
    this.unable = unable;
  }

  /** Returns the share of examinations that say nothing of it. */
  public double silent() {
    return silent;
  }

  /** Returns the share of examinations in which it is said to be absent for a reason. */
  public double absent(Absence reason) {
    return switch (reason) {
      case NOT_DONE -> notDone;
      case REFUSED -> refused;
      case UNABLE -> unable;
      default -> 0;
    };
  }

  /**
   * Returns the reason for absence at a place between 0 and 1; empty where it was done.
   *
   * @param unableTimes how many times as often as usual the person cannot do it
   */
  Optional<Absence> reason(double place, double unableTimes) {
    if (place < notDone) {
      return Optional.of(Absence.NOT_DONE);
    }
    if (place < notDone + refused) {
      return Optional.of(Absence.REFUSED);
    }
    return place < notDone + refused + unable * unableTimes
        ? Optional.of(Absence.UNABLE)
        : Optional.empty();
  }
}
