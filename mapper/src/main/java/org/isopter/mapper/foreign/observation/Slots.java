package org.isopter.mapper.foreign.observation;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.model.exam.Fact;

/** Makes facts of a place with a code: of its coded value, else of what its words tell. */
final class Slots {

  /** A value that is refused for these may be one that its words tell as a whole. */
  private static final Set<Why> IN_WORDS =
      EnumSet.of(Why.VALUE_UNFIT, Why.NOTATION_NOT_STATED, Why.NO_SIDE);

  /** These reasons say more of words than that they are no value. */
  private static final Set<Why> TELLING =
      EnumSet.of(Why.SIDES_DISAGREE, Why.UNIT_NOT_STATED, Why.CODES_DISAGREE);

  private Slots() {}

  /**
   * Takes the facts.
   *
   * @param coded reads the value as the finding has it
   * @param whole whether the value stands alone, without components that say more of it
   */
  static List<Fact<?>> read(SlotReader coded, WholeStatement stated, Ledger ledger, boolean whole)
      throws Refusal {
    Ledger.Mark mark = ledger.mark();
    try {
      return List.of(coded.read());
    } catch (Refusal refusal) {
      if (!whole || !IN_WORDS.contains(refusal.reason().why()) || !stated.isPossible()) {
        throw refusal;
      }
      ledger.backTo(mark);
      return inWords(stated, refusal);
    }
  }

  private static List<Fact<?>> inWords(WholeStatement stated, Refusal before) throws Refusal {
    try {
      return stated.take();
    } catch (Refusal refusal) {
      boolean named = before.reason().why() == Why.NO_SIDE && stated.namesEye();
      throw named || TELLING.contains(refusal.reason().why()) ? refusal : before;
    }
  }
}
