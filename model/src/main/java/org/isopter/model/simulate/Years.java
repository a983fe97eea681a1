package org.isopter.model.simulate;

/**
 * How old the persons of a group are at their first visit, and how many are women.
 *
 * @param group the group
 * @param spread mean and standard deviation in years
 * @param least the least age
 * @param most the greatest age
 * @param women the share of women
 * @param source where the figures come from
 */
record Years(Group group, Spread spread, double least, double most, double women, String source) {

  double draw(Draw draw) {
    double age = spread.mean() + spread.deviation() * draw.normal();
    return Math.max(least, Math.min(most, age));
  }
}
