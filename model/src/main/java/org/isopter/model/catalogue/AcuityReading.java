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
 * @param readInPart whether only a part of the line was read, as {@code 6/9p} says, when stated
 */
public record AcuityReading(
    Acuity acuity,
    Optional<Correction> correction,
    Optional<Chart> chart,
    Optional<Quantity> distance,
    Optional<Integer> lettersPerLine,
    Optional<Boolean> readInPart) {

  /** Makes a reading of which it is not stated whether the whole line was read. */
  public AcuityReading(
      Acuity acuity,
      Optional<Correction> correction,
      Optional<Chart> chart,
      Optional<Quantity> distance,
      Optional<Integer> lettersPerLine) {
    this(acuity, correction, chart, distance, lettersPerLine, Optional.empty());
  }

  /** Returns an acuity of which no condition is stated. */
  public static AcuityReading of(Acuity acuity) {
    return new AcuityReading(
        acuity, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Returns this reading as taken through a correction. */
  public AcuityReading through(Correction lens) {
    return new AcuityReading(
        acuity, Optional.of(lens), chart, distance, lettersPerLine, readInPart);
  }

  /** Returns this reading as taken on a chart. */
  public AcuityReading on(Chart which) {
    return new AcuityReading(
        acuity, correction, Optional.of(which), distance, lettersPerLine, readInPart);
  }

  /** Returns this reading as taken at a distance. */
  public AcuityReading from(Quantity metres) {
    return new AcuityReading(
        acuity, correction, chart, Optional.of(metres), lettersPerLine, readInPart);
  }

  /** Returns this reading as one of a part of the line. */
  public AcuityReading inPart() {
    return new AcuityReading(
        acuity, correction, chart, distance, lettersPerLine, Optional.of(true));
  }

  /** Says whether it is stated that letters of the line were missed, without how many. */
  public boolean isInPart() {
    return readInPart.orElse(false);
  }

  /** Returns the acuity as it was read: the line, and that it was read in part. */
  public String words() {
    return isInPart() ? acuity + " in part" : acuity.toString();
  }
}
