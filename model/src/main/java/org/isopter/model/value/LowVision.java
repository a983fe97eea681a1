package org.isopter.model.value;

/** What an eye still sees when it cannot read a chart. */
public enum LowVision implements Concept {
  COUNTING_FINGERS("CF", Code.snomed("422256009", "Counts fingers - distance vision (finding)")),
  HAND_MOVEMENTS("HM", Code.snomed("260295004", "Sees hand movements (finding)")),
  LIGHT_PERCEPTION("LP", Code.snomed("260296003", "Perceives light only (finding)")),
  LIGHT_PERCEPTION_ACCURATE(
      "LP accurate",
      Code.snomed("260297007", "Perception of light - accurate projection (finding)")),
  LIGHT_PERCEPTION_INACCURATE(
      "LP inaccurate",
      Code.snomed("260298002", "Perception of light - inaccurate projection (finding)")),
  NO_LIGHT_PERCEPTION(
      "NLP", Code.snomed("63063006", "Visual acuity, no light perception (finding)"));

  private final String abbreviation;
  private final Code code;

  LowVision(String abbreviation, Code code) {
    this.abbreviation = abbreviation;
    this.code = code;
  }

  /** Returns what the trade writes, for instance {@code CF}. */
  public String abbreviation() {
    return abbreviation;
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  @Override
  public Code code() {
    return code;
  }
}
