package org.isopter.model.catalogue;

import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;

/**
 * An acuity with the conditions it was measured under.
 *
 * @param acuity the acuity in the notation it was recorded in
 * @param correction what the eye looked through, when stated
 * @param chart the chart, when stated
 * @param distance the testing distance, when stated
 * @param lettersPerLine the letters on each line of the chart, when known; without it a suffix such
 *     as -2 has no numerical value
 */
public record AcuityReading(
    Acuity acuity,
    Optional<Correction> correction,
    Optional<Chart> chart,
    Optional<Quantity> distance,
    Optional<Integer> lettersPerLine) {

  /** Returns an acuity of which no condition is stated. */
  public static AcuityReading of(Acuity acuity) {
    return new AcuityReading(
        acuity, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Returns this reading as taken through a correction. */
  public AcuityReading through(Correction lens) {
    return new AcuityReading(acuity, Optional.of(lens), chart, distance, lettersPerLine);
  }

  /** Returns this reading as taken on a chart. */
  public AcuityReading on(Chart which) {
    return new AcuityReading(acuity, correction, Optional.of(which), distance, lettersPerLine);
  }

  /** Returns this reading as taken at a distance. */
  public AcuityReading from(Quantity metres) {
    return new AcuityReading(acuity, correction, chart, Optional.of(metres), lettersPerLine);
  }
}
