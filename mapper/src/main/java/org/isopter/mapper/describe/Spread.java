package org.isopter.mapper.describe;

import java.util.List;
import java.util.Map;

/**
 * How the numbers of a finding, or of one part of it, are spread.
 *
 * @param finding the finding
 * @param part the part
 * @param unit the unit, as people write it
 * @param byEye the numbers of each eye
 */
public record Spread(String finding, String part, String unit, Map<String, List<Double>> byEye) {

  public Spread {
    byEye = Map.copyOf(byEye);
  }

  /** Returns the finding, with the part where it is not the value itself. */
  String title() {
    return part.equals("value") ? finding : finding + ", " + part;
  }
}
