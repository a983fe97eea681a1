package org.isopter.model.drawing;

import java.math.BigDecimal;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.pressure.PressureRetest;

/**
 * How far two results of no change may lie apart.
 *
 * @param least by the narrowest of the studies
 * @param most by the widest of them
 * @param words the limit in words, with its source
 */
record TrendBand(BigDecimal least, BigDecimal most, String words) {

  static TrendBand of(RetestLimit limit) {
    return new TrendBand(
        limit.least(), limit.most(), limit.words() + " (" + limit.source().text() + ")");
  }

  static TrendBand of(PressureRetest limit) {
    String span =
        limit.least().compareTo(limit.most()) == 0
            ? limit.least().toPlainString()
            : limit.least() + " to " + limit.most();
    return new TrendBand(
        limit.least(),
        limit.most(),
        span
            + " mmHg ("
            + limit.source().text()
            + "). It is of one session: between visits the pressure itself changes too");
  }
}
