package org.isopter.model.simulate;

/** A number by which one thing that is drawn follows from another. */
enum Relation {
  BLUR(
      "Blur: minutes of arc for each mm of pupil and dioptre",
      0.65,
      "Smith, Optom Vis Sci 1991, from memory"),
  ROOM_PUPIL("Blur: mm of pupil that it is counted for", 4, Relation.PRACTICE),
  PINHOLE("Blur: mm of a pinhole", 1.2, Relation.PRACTICE),
  ACCOMMODATION("Accommodation at birth, D", 15, Relation.HOFSTETTER),
  ACCOMMODATION_LOST("Accommodation that a year takes, D", 0.25, Relation.HOFSTETTER),
  ACCOMMODATION_USED("Part of it that clears a far-sighted eye's blur", 0.5, Relation.PRACTICE),
  WORN("Glasses are worn from this much blur on, logMAR", 0.15, Relation.INVENTED),
  UNAIDED_TOO("Visits with glasses at which acuity is unaided too", 0.5, Relation.INVENTED),
  PRESBYOPIA("Years from which on print is read through glasses", 45, Relation.PRACTICE),
  AXES("Left axis: SD around the mirror image of the right, degrees", 10, Relation.INVENTED),
  THICKNESS("Thickness of the cornea, mean, um", 544, Relation.DOUGHTY),
  THICKNESS_SPREAD("Thickness of the cornea, SD, um", 35, Relation.DOUGHTY),
  THICKNESS_LIKENESS("Thickness of the cornea, correlation of the eyes", 0.95, Relation.INVENTED),
  THICKNESS_MEASURED(
      "Visits with a pressure at which thickness is measured", 0.2, Relation.INVENTED),
  GOLDMANN("Pressure: mmHg for each 10 um of thickness, applanation", 0.2, Relation.DOUGHTY),
  REBOUND("Pressure: mmHg for each 10 um of thickness, rebound", 0.35, Relation.INVENTED),
  NON_CONTACT("Pressure: mmHg for each 10 um of thickness, non-contact", 0.5, Relation.INVENTED),
  RED_DIFFERENCE("Red: persons without optic neuritis who report a difference", 0.24, Relation.RED),
  RED_MEAN("Red: their difference, mean, %", 9, Relation.RED),
  RED_LEAST("Red: their difference, least, %", 2, Relation.RED),
  RED_MOST("Red: their difference, most, %", 25, Relation.RED),
  UNABLE_YOUNG("\"Unable\" is so many times as frequent below 8 years", 4, Relation.INVENTED),
  UNABLE_OLD("\"Unable\" is so many times as frequent from 80 years on", 3, Relation.INVENTED),
  UNABLE_LOW(
      "\"Unable\" is so many times as frequent where an eye does not read 1.0 logMAR",
      3,
      Relation.INVENTED);

  private static final String PRACTICE = "common practice, no source";
  private static final String INVENTED = "invented";
  private static final String HOFSTETTER = "Hofstetter 1950, least amplitude, from memory";
  private static final String DOUGHTY = "Doughty and Zaman, Surv Ophthalmol 2000, from memory";
  private static final String RED =
      "Mikolajczyk et al., Neurol Clin Pract 2022, 101 healthy persons";

  private final String title;
  private final double number;
  private final String source;

  Relation(String title, double number, String source) {
    this.title = title;
    this.number = number;
    this.source = source;
  }

  /** Returns what the number is, with its unit. */
  String title() {
    return title;
  }

  /** Returns the number. */
  double number() {
    return number;
  }

  /** Returns where it comes from. */
  String source() {
    return source;
  }
}
