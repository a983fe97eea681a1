package org.isopter.sheet;

import java.util.List;

/**
 * A row of the sheet: what is examined, with a field for each eye or one for both together.
 *
 * @param key its name in a draft
 * @param title what is examined
 * @param heading what an answer without a heading is about
 * @param perEye whether each eye has a field of its own
 * @param normal what the button for normal writes into a field; empty where normal is a figure
 * @param example an answer that is understood
 */
public record SheetRow(
    String key, String title, String heading, boolean perEye, String normal, String example) {

  /** The usual order: acuity before anything that dazzles, pressure near the end. */
  public static final List<SheetRow> ALL =
      List.of(
          eyes("acuity", "Acuity at distance", "VA", "", "6/9-2 sc"),
          eyes("pinhole", "Acuity through a pinhole", "PH", "", "6/6"),
          eyes("near", "Acuity at near", "NV", "", "N5 @ 40 cm"),
          eyes("pupil", "Pupil", "pupil", "direct reactive", "4 mm dim"),
          both("pupils", "Pupils compared", "pupils", "equal", "unequal"),
          both("defect", "Relative afferent defect", "RAPD", "none", "L 2+"),
          eyes("colour", "Colour plates", "ishihara", "", "13/15"),
          eyes("red", "Red saturation", "red sat", "100%", "70%"),
          eyes("field", "Field by confrontation", "VF", "full to confrontation", "ST reduced"),
          eyes("spot", "Blind spot", "blind spot", "normal", "enlarged"),
          eyes("disc", "Optic disc", "disc", "normal", "pale, clear margins"),
          eyes("lids", "Drooping lid", "ptosis", "absent", "2 mm"),
          eyes("movements", "Eye movements", "EOM", "full", "abduction -2, rest full"),
          both("double", "Double vision", "diplopia", "no diplopia", "binocular horizontal"),
          both(
              "nystagmus",
              "Nystagmus",
              "nystagmus",
              "no nystagmus",
              "OU horizontal jerk, fast left"),
          eyes("pressure", "Pressure in the eye", "IOP", "", "14 GAT"));

  private static SheetRow eyes(
      String key, String title, String heading, String normal, String example) {
    return new SheetRow(key, title, heading, true, normal, example);
  }

  private static SheetRow both(
      String key, String title, String heading, String normal, String example) {
    return new SheetRow(key, title, heading, false, normal, example);
  }
}
