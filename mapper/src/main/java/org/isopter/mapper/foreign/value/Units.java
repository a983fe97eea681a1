package org.isopter.mapper.foreign.value;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** Finds the unit of a quantity among those that a finding may have, in any spelling. */
final class Units {

  /** UCUM by its address and by its OID in the HL7 registry. */
  private static final List<String> UCUM_NAMES =
      List.of(Code.UCUM, "urn:oid:2.16.840.1.113883.6.8");

  private final Habits habits;
  private final List<Unit> allowed;

  Units(Habits habits, List<Unit> allowed) {
    this.habits = habits;
    this.allowed = List.copyOf(allowed);
  }

  /** Takes the unit of a quantity; its number is left alone. */
  Unit take(Place quantity) throws Refusal {
    String code = quantity.text("code");
    String text = quantity.text("unit");
    Optional<Unit> coded = code.isEmpty() ? Optional.empty() : unit(code);
    Optional<Unit> named = text.isEmpty() ? Optional.empty() : unit(text);
    refuseForeignSystem(quantity, code);
    if (!code.isEmpty() && coded.isEmpty()) {
      throw unknown(quantity, code);
    }
    if (coded.isPresent() && !text.isEmpty() && named.isEmpty()) {
      throw conflict(quantity, coded.get(), text);
    }
    if (coded.isPresent() && named.isPresent()) {
      refuseConflict(quantity, coded.get(), text);
    }
    Optional<Unit> unit = coded.or(() -> named).or(() -> none(code + text));
    if (unit.isEmpty()) {
      throw unknown(quantity, text);
    }
    mark(quantity, unit.get(), named.isPresent());
    return unit.get();
  }

  /** Returns the unit that a text names, if it may be one here. */
  Optional<Unit> unit(String spelling) {
    Optional<String> ucum = habits.ucum(spelling);
    for (Unit unit : allowed) {
      boolean exact = unit.isCoded(spelling) || unit.label().equals(spelling);
      if (exact || ucum.filter(unit.ucum()::equals).isPresent() || isPlainNumber(unit, spelling)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /** A ratio of two lengths is a plain number; it may say so or say nothing. */
  Optional<Unit> none(String written) {
    return written.isEmpty() && allowed.contains(Unit.ONE)
        ? Optional.of(Unit.ONE)
        : Optional.empty();
  }

  private static boolean isPlainNumber(Unit unit, String spelling) {
    return unit.equals(Unit.ONE) && List.of("ratio", "{ratio}").contains(Habits.plain(spelling));
  }

  private void mark(Place quantity, Unit unit, boolean named) {
    boolean ours =
        quantity.text("system").equals(Code.UCUM) && quantity.text("code").equals(unit.ucum());
    boolean label = quantity.text("unit").equals(unit.label());
    if (ours) {
      quantity.take(Ledger.CATALOGUE, "system", "code");
    } else if (!quantity.text("code").isEmpty()) {
      quantity.take(RuleId.UNIT_SPELLING, "system", "code");
    } else {
      quantity.take(RuleId.UNIT_UNCODED, "system");
    }
    if (named) {
      quantity.take(
          ours ? label ? Ledger.CATALOGUE : RuleId.UNIT_SPELLING : rule(quantity), "unit");
    }
    if (unit.equals(Unit.ONE) && !ours) {
      quantity.ledger().used(RuleId.UNIT_OF_RATIO);
    }
  }

  private static String rule(Place quantity) {
    return quantity.text("code").isEmpty() ? RuleId.UNIT_UNCODED : RuleId.UNIT_SPELLING;
  }

  private void refuseConflict(Place quantity, Unit coded, String text) throws Refusal {
    Optional<String> ucum = habits.ucum(text);
    if (ucum.isPresent() && !coded.isCoded(ucum.get())) {
      throw conflict(quantity, coded, text);
    }
  }

  private static Refusal conflict(Place quantity, Unit coded, String text) {
    return Refusal.of(
        Why.UNITS_DISAGREE,
        quantity.at() + "/unit",
        "\"" + text + "\" beside the code of " + coded.label(),
        "one unit");
  }

  static void refuseForeignSystem(Place quantity, String code) throws Refusal {
    String system = quantity.text("system");
    if (!code.isEmpty() && !system.isEmpty() && !UCUM_NAMES.contains(system)) {
      throw Refusal.of(
          Why.UNIT_NOT_STATED, quantity.at() + "/system", "\"" + system + "\"", Code.UCUM);
    }
  }

  private Refusal unknown(Place quantity, String seen) {
    String wanted = String.join(" or ", allowed.stream().map(Unit::label).toList());
    return Refusal.of(
        Why.UNIT_NOT_STATED,
        quantity.at(),
        seen.isEmpty() ? "no unit" : "\"" + seen + "\"",
        wanted);
  }
}
