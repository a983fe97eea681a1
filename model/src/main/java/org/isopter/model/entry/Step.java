package org.isopter.model.entry;

import java.util.List;

/**
 * A step of the examination.
 *
 * @param name what is examined
 * @param heading what an answer without a heading is about
 * @param normal what the key for normal records, in shorthand; empty where normal is a figure
 * @param example an answer that is understood
 */
public record Step(String name, String heading, String normal, String example) {

  /** The usual order: acuity before anything that dazzles, pressure and movements at the end. */
  static final List<Step> USUAL =
      List.of(
          new Step("acuity", "VA", "", "sc R 6/9 L 6/6"),
          new Step("pinhole", "PH", "", "R 6/6 L NI"),
          new Step("near", "NV", "", "R N5 L N8"),
          new Step("pupils", "pupils", "PERL", "PERRLA, or R 3 mm L 4 mm dim"),
          new Step("afferent defect", "RAPD", "no RAPD", "L 2+"),
          new Step("colour", "ishihara", "", "R 13/15 L 12/15"),
          new Step("red", "red sat", "", "R 70% L 100%"),
          new Step("blind spot", "blind spot", "blind spot each normal", "L enlarged"),
          new Step("fields", "VF", "VF each full to confrontation", "L IT reduced, rest full"),
          new Step("disc", "disc", "disc each normal", "R pink, clear margins"),
          new Step("lids", "ptosis", "no ptosis", "L 2 mm"),
          new Step("pressure", "IOP", "", "R 14 L 16 GAT"),
          new Step("movements", "EOM", "EOM full; no diplopia; no nystagmus", "R abduction -2"));

  boolean hasNormal() {
    return !normal.isEmpty();
  }
}
