package org.isopter.model.simulate;

import org.isopter.model.value.Site;

/**
 * One number for each eye.
 *
 * @param right that of the right eye
 * @param left that of the left eye
 */
record PerEye(double right, double left) {

  double of(Site eye) {
    return eye == Site.RIGHT ? right : left;
  }

  /** Returns two standard normal numbers whose correlation is the likeness. */
  static PerEye alike(Draw draw, double likeness) {
    double both = Math.sqrt(likeness) * draw.normal();
    double own = Math.sqrt(1 - likeness);
    return new PerEye(both + own * draw.normal(), both + own * draw.normal());
  }
}
