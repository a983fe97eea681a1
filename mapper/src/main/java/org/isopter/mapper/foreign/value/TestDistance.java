package org.isopter.mapper.foreign.value;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Unit;

/** How far away an acuity was tested that its code does not call near. */
public final class TestDistance {

  /** Print is read at 33 to 40 cm, charts at a metre or more (common practice, no source). */
  private static final BigDecimal NEAR = new BigDecimal("50");

  private static final Map<Unit, BigDecimal> CENTIMETRES =
      Map.of(
          Unit.METRE, new BigDecimal("100"),
          Unit.CENTIMETRE, BigDecimal.ONE,
          Unit.FOOT, new BigDecimal("30.48"),
          Unit.INCH, new BigDecimal("2.54"));

  private TestDistance() {}

  /**
   * Refuses an acuity, unqualified or at distance, that only its distance says to be near.
   *
   * @throws Refusal when it is a distance of reading
   */
  public static void refuseNear(EncodedValue panel, Place holder) throws Refusal {
    Optional<Datum> distance =
        Optional.ofNullable(panel.parts().get("distance")).flatMap(Outcome::ifFound);
    boolean charted = !panel.notation().map(Concept::word).equals(Optional.of("low-vision"));
    if (charted
        && distance.isPresent()
        && distance.get() instanceof Datum.Measure measure
        && isNear(measure)) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          holder.at(),
          "an acuity that is not called near, tested at 50 cm or less",
          "the code of near acuity, or a greater distance");
    }
  }

  private static boolean isNear(Datum.Measure measure) {
    BigDecimal one = CENTIMETRES.getOrDefault(measure.unit(), NEAR);
    return measure.value().multiply(one).compareTo(NEAR) <= 0;
  }
}
