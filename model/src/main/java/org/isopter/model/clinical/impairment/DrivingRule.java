package org.isopter.model.clinical.impairment;

import java.util.Optional;
import org.isopter.model.finding.Citation;

/** A published acuity figure for driving; every one is subject to local rules and to its date. */
public enum DrivingRule {
  /** United Kingdom, cars; the number plate test is a second, separate test. */
  UK_GROUP_1(
      "6/12 0.5 20/40 4/8 0.3", "", "gov.uk, visual disorders: guidance on fitness to drive"),
  /** United Kingdom, lorries and buses; spectacles of at most +8 D. */
  UK_GROUP_2(
      "6/7.5 0.8 20/25 4/5 0.1",
      "6/60 0.1 20/200 4/40 1.0",
      "gov.uk, visual disorders: guidance on fitness to drive"),
  /** European Union, cars. */
  EU_GROUP_1(
      "6/12 0.5 20/40 4/8 0.3",
      "",
      "directive 2009/113/EC, OJ L 223 p. 31, Annex; 0.5 as quoted in PMC9561926, table 1"),
  /** European Union, lorries and buses. */
  EU_GROUP_2(
      "6/7.5 0.8 20/25 4/5 0.1",
      "6/60 0.1 20/200 4/40 1.0",
      "directive 2009/113/EC, OJ L 223 p. 31, Annex; figures as the Association of Optometrists"
          + " (UK) prints them, \"Group 2 lorry and bus drivers\""),
  /** European Union, lorries and buses, the older directive. */
  EU_GROUP_2_BEFORE_2009(
      "6/7.5 0.8 20/25 4/5 0.1",
      "6/12 0.5 20/40 4/8 0.3",
      "directive 91/439/EEC as quoted in OJ C 137 E/156"),
  /** Most of the United States; it varies by state. */
  US_MOST_STATES(
      "6/12 0.5 20/40 4/8 0.3", "", "no source that names the states was seen; it varies by state");

  private final VisionEdge better;
  private final Optional<VisionEdge> worse;
  private final Citation source;

  DrivingRule(String better, String worse, String source) {
    this.better = VisionEdge.parse(better);
    this.worse = worse.isEmpty() ? Optional.empty() : Optional.of(VisionEdge.parse(worse));
    this.source = new Citation(source);
  }

  /** Returns the figure for the better eye, or for both eyes together. */
  public VisionEdge better() {
    return better;
  }

  /** Returns the figure for the worse eye, where the rule has one. */
  public Optional<VisionEdge> worse() {
    return worse;
  }

  /** Returns where the figure was found. */
  public Citation source() {
    return source;
  }
}
