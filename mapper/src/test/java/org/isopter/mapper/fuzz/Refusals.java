package org.isopter.mapper.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.isopter.model.value.Fault;

/** What holds for every refusal: it can be acted on. */
final class Refusals {

  private Refusals() {}

  /** Each fault says what was seen and what was wanted; one of the whole text stands alone. */
  static void check(List<Fault> faults) {
    for (Fault fault : faults) {
      assertFalse(fault.seen().isBlank(), () -> "nothing seen: " + fault);
      assertFalse(fault.wanted().isBlank(), () -> "nothing wanted: " + fault);
      if (fault.path().isBlank()) {
        assertEquals(1, faults.size(), () -> "no place: " + faults);
      }
    }
  }
}
