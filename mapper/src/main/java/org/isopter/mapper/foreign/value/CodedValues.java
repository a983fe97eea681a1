package org.isopter.mapper.foreign.value;

import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Truth;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;

/** Takes the answer of an observation or a component out of a list of answers. */
final class CodedValues {

  private final Vocabulary vocabulary;
  private final Place holder;

  CodedValues(Vocabulary vocabulary, Place holder) {
    this.vocabulary = vocabulary;
    this.holder = holder;
  }

  /** Takes the answer: by its code, by another published code of it, or in words. */
  Concept take(Spec.Coded spec) throws Refusal {
    Answers answers = spec.answers();
    Optional<Place> concept = holder.child("valueCodeableConcept");
    if (concept.isEmpty()) {
      return plainAnswer(spec);
    }
    Optional<Concept> found = Optional.empty();
    for (Coding coding :
        Coding.of(concept.get(), t -> answer(answers, t).isPresent(), vocabulary)) {
      Optional<Concept> one = coding.sure() ? answer(answers, coding.token()) : Optional.empty();
      if (one.isPresent()) {
        if (found.isPresent() && !found.equals(one)) {
          throw Refusal.of(
              Why.VALUE_UNFIT, coding.place().at(), one.get().word(), found.get().word());
        }
        found = one;
        boolean own = coding.token().equals(one.get().code().token());
        coding.take(
            own ? Ledger.CATALOGUE : RuleId.ANSWER_ALIAS, Optional.of(one.get().code().display()));
      }
    }
    if (found.isPresent()) {
      agree(concept.get(), answers, found.get());
      return found.get();
    }
    return named(concept.get(), answers)
        .orElseThrow(() -> ForeignValues.unfit(holder, DatumTexts.wanted(spec)));
  }

  /** Takes a text that names the same answer as the code, and refuses one that names another. */
  private void agree(Place concept, Answers answers, Concept found) throws Refusal {
    Optional<Concept> text = word(answers, concept.text("text"));
    if (text.equals(Optional.of(found))) {
      concept.take(RuleId.ANSWER_TEXT, "text");
    }
    refuseOther(text, found, concept);
    for (Place coding : concept.list("coding")) {
      refuseOther(word(answers, coding.text("display")), found, coding);
    }
  }

  private static void refuseOther(Optional<Concept> named, Concept found, Place at) throws Refusal {
    if (named.isPresent() && !named.get().equals(found)) {
      throw Refusal.of(
          Why.VALUE_UNFIT,
          at.at(),
          named.get().word() + " in words beside the code of " + found.word(),
          "one answer");
    }
  }

  private Optional<Concept> answer(Answers answers, String token) {
    int bar = token.indexOf('|');
    return answers
        .byCode(token.substring(0, bar), token.substring(bar + 1))
        .or(() -> vocabulary.habits().answer(answers.id(), token).flatMap(answers::byWord));
  }

  /** An answer in words: the text, or the display of a coding without a code of others. */
  private Optional<Concept> named(Place concept, Answers answers) {
    Optional<Concept> byText = word(answers, concept.text("text"));
    if (byText.isPresent()) {
      concept.take(RuleId.ANSWER_TEXT, "text");
      return byText;
    }
    for (Place coding : concept.list("coding")) {
      Optional<Concept> byDisplay = word(answers, coding.text("display"));
      if (Coding.isLocal(coding) && byDisplay.isPresent()) {
        coding.take(RuleId.ANSWER_TEXT, "display");
        return byDisplay;
      }
    }
    return Optional.empty();
  }

  private Concept plainAnswer(Spec.Coded spec) throws Refusal {
    Optional<Concept> truth =
        Truth.of(holder).flatMap(yes -> spec.answers().byWord(yes ? "present" : "absent"));
    if (truth.isPresent() && spec.answers().id().equals("presence")) {
      holder.take(RuleId.ANSWER_TRUTH, "valueBoolean");
      return truth.get();
    }
    Optional<Concept> word = word(spec.answers(), holder.text("valueString"));
    word.ifPresent(found -> holder.take(RuleId.ANSWER_TEXT, "valueString"));
    return word.orElseThrow(() -> ForeignValues.unfit(holder, DatumTexts.wanted(spec)));
  }

  private Optional<Concept> word(Answers answers, String text) {
    for (Concept concept : answers.concepts()) {
      if (!text.isEmpty()
          && (Habits.plain(text).equals(concept.word())
              || Vocabulary.sameName(text, concept.code().display()))) {
        return Optional.of(concept);
      }
    }
    return vocabulary
        .habits()
        .words()
        .answer(answers.id(), CodeText.words(text))
        .flatMap(answers::byWord);
  }
}
