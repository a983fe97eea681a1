package org.isopter.model.simulate;

/**
 * A normal distribution, cut at the ends of its measure.
 *
 * @param mean the mean before the cut
 * @param deviation the standard deviation before the cut
 */
public record NormalSpread(double mean, double deviation) {}
