package org.isopter.model.value;

/**
 * A unit of measure: its UCUM code and the text that people read and write.
 *
 * <p>A logMAR and a decimal acuity are both plain numbers to UCUM. An annotation in the code tells
 * them apart, for 0.8 is a good acuity in one of them and a poor one in the other.
 *
 * @param ucum the case-sensitive UCUM code
 * @param text what is printed behind the number
 */
public record Unit(String ucum, String text) {

  public static final Unit ONE = new Unit("1", "");
  public static final Unit PERCENT = new Unit("%", "%");
  public static final Unit MM_HG = new Unit("mm[Hg]", "mmHg");
  public static final Unit MILLIMETRE = new Unit("mm", "mm");
  public static final Unit CENTIMETRE = new Unit("cm", "cm");
  public static final Unit METRE = new Unit("m", "m");
  public static final Unit INCH = new Unit("[in_i]", "in");
  public static final Unit FOOT = new Unit("[ft_i]", "ft");
  public static final Unit MICROMETRE = new Unit("um", "um");
  public static final Unit DIOPTRE = new Unit("[diop]", "D");
  public static final Unit PRISM_DIOPTRE = new Unit("[p'diop]", "PD");
  public static final Unit DEGREE = new Unit("deg", "deg");
  public static final Unit ARC_SECOND = new Unit("''", "arcsec");
  public static final Unit CYCLES_PER_DEGREE = new Unit("{cycles}/deg", "cycles/deg");
  public static final Unit DECIBEL = new Unit("dB", "dB");
  public static final Unit SECOND = new Unit("s", "s");
  public static final Unit MINUTE = new Unit("min", "min");
  public static final Unit DAY = new Unit("d", "days");
  public static final Unit WEEK = new Unit("wk", "weeks");
  public static final Unit MONTH = new Unit("mo", "months");
  public static final Unit YEAR = new Unit("a", "years");
  public static final Unit LOGMAR = new Unit("{logMAR}", "logMAR");
  public static final Unit DECIMAL = new Unit("{decimal}", "decimal");
  public static final Unit LOG_UNIT = new Unit("{log_units}", "log units");
  public static final Unit M_UNIT = new Unit("{M_units}", "M units");
  public static final Unit POINT = new Unit("{N_points}", "N points");

  /** Returns true for a UCUM code of this unit: its own, or 1 for a number with an annotation. */
  public boolean isCoded(String code) {
    boolean annotated = ucum.startsWith("{") && ucum.endsWith("}");
    return ucum.equals(code) || (annotated && code.equals("1"));
  }

  /** Returns the text as the unit of a FHIR quantity: the UCUM code where people write nothing. */
  public String label() {
    return text.isEmpty() ? ucum : text;
  }
}
