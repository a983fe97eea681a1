package org.isopter.model.clinical.fundus;

import java.util.List;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;

/** A level of the international clinical scale of diabetic retinopathy. */
public enum RetinopathyLevel {
  NONE("0 none", "no abnormalities"),
  MILD("1 mild NPDR", "microaneurysms only"),
  MODERATE("2 moderate NPDR", "more than microaneurysms, less than severe"),
  SEVERE(
      "3 severe NPDR",
      "any of: >20 intraretinal haemorrhages in EACH of 4 quadrants; definite venous beading in"
          + " >=2; prominent IRMA in >=1; and no proliferation"),
  PROLIFERATIVE("4 PDR", "neovascularisation and/or vitreous/preretinal haemorrhage");

  /**
   * What the retina of one eye shows.
   *
   * @param microaneurysms whether there are microaneurysms
   * @param other whether there is any other abnormality of diabetes, a single haemorrhage included
   * @param haemorrhages in how many quadrants there are more than 20 intraretinal haemorrhages
   * @param beading in how many quadrants there is definite venous beading
   * @param irma in how many quadrants there are prominent intraretinal microvascular abnormalities
   * @param proliferation whether there are new vessels, or vitreous or preretinal haemorrhage
   */
  public record Signs(
      boolean microaneurysms,
      boolean other,
      int haemorrhages,
      int beading,
      int irma,
      boolean proliferation) {

    /**
     * Makes the signs.
     *
     * @throws IllegalArgumentException when there are not four quadrants
     */
    public Signs {
      for (int quadrants : List.of(haemorrhages, beading, irma)) {
        if (quadrants < 0 || quadrants > 4) {
          throw new IllegalArgumentException(quadrants + " quadrants of 0 to 4");
        }
      }
    }

    private List<String> facts() {
      return List.of(
          "microaneurysms " + (microaneurysms ? "yes" : "no"),
          "other abnormality " + (other ? "yes" : "no"),
          "more than 20 haemorrhages in " + haemorrhages + " quadrants",
          "venous beading in " + beading + " quadrants",
          "microvascular abnormalities in " + irma + " quadrants",
          "proliferation " + (proliferation ? "yes" : "no"));
    }

    private boolean isSevere() {
      return haemorrhages == 4 || beading >= 2 || irma >= 1;
    }

    private boolean isMore() {
      return other || haemorrhages > 0 || beading > 0;
    }
  }

  /** The separate axis of the scale: macular oedema. */
  public enum MacularOedema {
    APPARENTLY_ABSENT,
    APPARENTLY_PRESENT
  }

  private static final Citation SOURCE =
      new Citation("Wilkinson 2003, Ophthalmology, abstract; table in Diabetes Care");

  private final String title;
  private final String rule;

  RetinopathyLevel(String title, String rule) {
    this.title = title;
    this.rule = rule;
  }

  /** Returns the number and name of the level. */
  public String title() {
    return title;
  }

  /** Returns the rule of the level. */
  public String rule() {
    return rule;
  }

  /** Returns the level that the signs have; macular oedema is apart from it. */
  public static Answer<RetinopathyLevel> of(Signs signs) {
    RetinopathyLevel level = level(signs);
    return new StatementBuilder("retina.retinopathy-level", SOURCE, signs.facts())
        .given(level, Certainty.BY_RULE, "Level " + level.title + ": " + level.rule + ".");
  }

  private static RetinopathyLevel level(Signs signs) {
    if (signs.proliferation()) {
      return PROLIFERATIVE;
    }
    if (signs.isSevere()) {
      return SEVERE;
    }
    return signs.isMore() ? MODERATE : signs.microaneurysms() ? MILD : NONE;
  }
}
