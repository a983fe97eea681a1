package org.isopter.model.catalogue;

import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;

/**
 * An acuity of which it is known only that it is worse, or better, than a line.
 *
 * @param line the line, which is not the acuity itself
 * @param side on which side of the line the acuity lies: {@code worse} or {@code better}
 * @param correction what the eye looked through, when stated
 * @param chart the chart, when stated
 * @param distance the testing distance, when stated
 */
public record AcuityBound(
    Acuity line,
    Term side,
    Optional<Correction> correction,
    Optional<Chart> chart,
    Optional<Quantity> distance) {

  /** Says whether the eye saw less than the line, by however much. */
  public boolean isWorse() {
    return side.word().equals("worse");
  }
}
