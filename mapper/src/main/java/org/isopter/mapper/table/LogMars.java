package org.isopter.mapper.table;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * The one scale on which acuities of all notations compare. It is derived by the clinical functions
 * and nowhere else: what they withhold has no number here.
 */
final class LogMars {

  private final Map<FactKey, Quantity> byFact = new HashMap<>();

  LogMars(List<Derived> derived) {
    for (Derived one : derived) {
      one.value()
          .filter(number -> number.unit().equals(Unit.LOGMAR) && one.from().size() == 1)
          .ifPresent(number -> byFact.put(one.from().get(0), number));
    }
  }

  Optional<Quantity> of(FactKey fact) {
    return Optional.ofNullable(byFact.get(fact));
  }
}
