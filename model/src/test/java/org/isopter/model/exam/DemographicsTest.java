package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** Limits catch slips: common practice, no source. */
class DemographicsTest {

  @Test
  void refusesAnAgeThatNobodyHas() {
    assertThrows(FaultException.class, () -> age("131", Unit.YEAR));
    assertThrows(FaultException.class, () -> age("-1", Unit.YEAR));
  }

  @Test
  void refusesAPartOfAYearAndAnAgeInAnotherUnit() {
    assertThrows(FaultException.class, () -> age("5.5", Unit.YEAR));
    assertThrows(FaultException.class, () -> age("5", Unit.METRE));
  }

  @Test
  void keepsTheUnitOfASmallChild() {
    assertEquals("8 months", age("8", Unit.MONTH).age().orElseThrow().toString());
  }

  @Test
  void isUnknownWhenNothingIsStated() {
    assertTrue(Demographics.UNKNOWN.isUnknown());
    assertTrue(!Demographics.years(67, AdministrativeSex.FEMALE).isUnknown());
  }

  private static Demographics age(String digits, Unit unit) {
    return new Demographics(Optional.of(Quantity.of(digits, unit)), Optional.empty());
  }
}
