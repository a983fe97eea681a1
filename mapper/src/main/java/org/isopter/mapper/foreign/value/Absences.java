package org.isopter.mapper.foreign.value;

import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Absence;

/** Takes the reason why there is no value. */
public final class Absences {

  private final Vocabulary vocabulary;

  public Absences(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * Takes the reason that a holder gives.
   *
   * @throws Refusal when the reason is none that the catalogue knows
   */
  public Absence reason(Place from) throws Refusal {
    Place concept = from.child("dataAbsentReason").orElseThrow();
    for (Coding coding : Coding.of(concept, t -> absence(t).isPresent(), vocabulary)) {
      Optional<Absence> reason = absence(coding.token());
      if (reason.isPresent()) {
        boolean own = coding.token().equals(reason.get().code().token());
        coding.take(
            own ? Ledger.CATALOGUE : RuleId.ABSENCE_ALIAS,
            Optional.of(reason.get().code().display()));
        return reason.get();
      }
    }
    throw Refusal.of(
        Why.VALUE_UNFIT, concept.at(), RawJson.write(concept.value()), "a reason of the catalogue");
  }

  private Optional<Absence> absence(String token) {
    for (Absence reason : Absence.values()) {
      boolean word = vocabulary.habits().absence(token).filter(reason.word()::equals).isPresent();
      if (word || reason.code().token().equals(token)) {
        return Optional.of(reason);
      }
    }
    return Optional.empty();
  }
}
