package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Concept;
import org.isopter.model.value.TextCheck;

/** What an observation says around a finding: the technique, the instrument, the remarks. */
final class MethodAndNotes {

  /** Techniques that are each one kind of a wider one. */
  private static final Map<String, Set<String>> VAGUER =
      Map.of(
          "objective", Set.of("retinoscopy", "autorefraction"),
          "applanation", Set.of("goldmann", "perkins"));

  private final Vocabulary vocabulary;
  private final Place observation;

  MethodAndNotes(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
  }

  /** Returns the fact with the technique and the instrument, which are taken. */
  Fact<?> withMethod(Fact<?> fact, Meaning meaning) throws Refusal {
    Fact<?> complete = fact;
    Optional<Concept> method = method(fact.finding(), meaning);
    if (method.isPresent()) {
      refuseOther(fact, method.get());
      complete = complete.by(method.get());
    }
    Optional<Place> device = observation.child("device");
    String name = device.map(d -> d.text("display")).orElse("");
    if (!name.isEmpty() && TextCheck.check(name).isEmpty()) {
      device.ifPresent(d -> d.take(Ledger.CATALOGUE, "display"));
      complete = complete.with(name);
    }
    return complete;
  }

  /** Returns the fact with the notes of the observation behind its own remarks; they are taken. */
  Fact<?> remarked(Fact<?> fact) {
    List<String> remarks = new ArrayList<>(fact.remarks());
    for (Place note : observation.list("note")) {
      String text = note.text("text");
      if (!text.isEmpty() && TextCheck.check(text).isEmpty()) {
        note.take(Ledger.CATALOGUE, "text");
        remarks.add(text);
      }
    }
    return fact.remarks(remarks);
  }

  /** Returns the notation that a published profile fixes, where the observation claims one. */
  Optional<String> profileNotation() {
    return observation
        .child("meta")
        .flatMap(
            meta ->
                meta.list("profile").stream()
                    .flatMap(p -> p.value().string().stream())
                    .flatMap(url -> vocabulary.habits().profileNotation(url).stream())
                    .findFirst());
  }

  /** The words of a text may name a technique, too. */
  private void refuseOther(Fact<?> fact, Concept method) throws Refusal {
    if (fact.method().isPresent() && !fact.method().get().word().equals(method.word())) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          observation.at() + "/method",
          method.word() + " beside " + fact.method().get().word() + " in words",
          "one technique");
    }
  }

  private Optional<Concept> method(Finding<?> finding, Meaning meaning) throws Refusal {
    Optional<Answers> methods = finding.methods();
    Optional<Place> place = observation.child("method");
    Optional<Concept> coded = Optional.empty();
    if (methods.isPresent() && place.isPresent()) {
      coded = coded(methods.get(), place.get());
    }
    Optional<Concept> named = meaning.method().flatMap(w -> methods.flatMap(m -> m.byWord(w)));
    if (coded.isPresent() && named.isPresent()) {
      refuseAnother(coded.get().word(), named.get().word());
    }
    return coded.or(() -> named);
  }

  private Optional<Concept> coded(Answers methods, Place place) throws Refusal {
    for (Coding coding : Coding.of(place, t -> byToken(methods, t).isPresent(), vocabulary)) {
      Optional<Concept> method = byToken(methods, coding.token());
      if (method.isPresent() && coding.sure()) {
        String display = method.get().code().display();
        boolean own = coding.token().equals(method.get().code().token());
        refuseOtherName(coding.place(), method.get());
        coding.take(own ? Ledger.CATALOGUE : RuleId.ANSWER_ALIAS, Optional.of(display));
        if (Vocabulary.sameName(display, place.text("text"))) {
          place.take(Ledger.CATALOGUE, "text");
        }
        return method;
      }
    }
    return Optional.empty();
  }

  /** The name that was sent with the code of a technique may be that of another one. */
  private void refuseOtherName(Place coding, Concept method) throws Refusal {
    String display = coding.text("display");
    CodeText text = new CodeText(vocabulary);
    for (Effect said : text.conditions(display).or(() -> text.read(display)).orElse(List.of())) {
      if (said.method().isPresent()) {
        refuseAnother(method.word(), said.method().get());
      }
    }
  }

  /** The code of the finding, or words, may name the technique less exactly than its code does. */
  private void refuseAnother(String coded, String named) throws Refusal {
    boolean vaguer =
        VAGUER.getOrDefault(named, Set.of()).contains(coded)
            || VAGUER.getOrDefault(coded, Set.of()).contains(named);
    if (!coded.equals(named) && !vaguer) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          observation.at() + "/method",
          coded + " and " + named,
          "one technique");
    }
  }

  private Optional<Concept> byToken(Answers answers, String token) {
    int bar = token.indexOf('|');
    return answers
        .byCode(token.substring(0, bar), token.substring(bar + 1))
        .or(() -> vocabulary.habits().method(token).flatMap(answers::byWord));
  }
}
