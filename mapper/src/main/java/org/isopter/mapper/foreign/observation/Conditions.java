package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.CodedStatement;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Truth;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;

/** Gathers what an observation says by codes: its own, its method's, its device's, its answers'. */
final class Conditions {

  private final Vocabulary vocabulary;
  private final Neighbours neighbours;
  private final ConditionWords words;
  private final CodeNames names;
  private final WordsBeside beside;

  Conditions(Vocabulary vocabulary, Neighbours neighbours, Qualifiers qualifiers) {
    this.vocabulary = vocabulary;
    this.neighbours = neighbours;
    this.words = new ConditionWords(vocabulary, qualifiers);
    this.names = new CodeNames(vocabulary);
    this.beside = new WordsBeside(vocabulary);
  }

  /** Takes the codes of an observation or a component. */
  Meaning of(Place holder) throws Refusal {
    Meaning meaning = new Meaning();
    Optional<Place> code = holder.child("code");
    if (code.isEmpty()) {
      return meaning;
    }
    List<Coding> unsure = new ArrayList<>();
    for (Coding coding : Coding.of(code.get(), vocabulary::knows, vocabulary)) {
      if (coding.sure() && !vocabulary.habits().isWider(coding.token())) {
        add(meaning, coding);
      } else {
        unsure.add(coding);
      }
    }
    for (Coding coding : unsure) {
      corroborated(meaning, coding);
    }
    if (meaning.isEmpty()) {
      names.add(meaning, code.get());
      for (Coding coding : unsure) {
        corroborated(meaning, coding);
      }
    } else {
      beside.add(meaning, code.get());
    }
    if (meaning.isEmpty()) {
      wider(meaning, unsure, code.get());
    }
    return meaning;
  }

  /** Takes the codes of a component; an abbreviation may need the findings beside it. */
  Meaning of(Place component, Set<String> beside) throws Refusal {
    Meaning meaning = of(component);
    Optional<Place> code = component.child("code").filter(c -> c.list("coding").isEmpty());
    Optional<Effect> title =
        code.flatMap(
            c -> vocabulary.habits().words().titledBeside(CodeText.words(c.text("text")), beside));
    if (meaning.isEmpty() && title.isPresent()) {
      meaning.add(title.get(), component.at());
      code.get().take(RuleId.CODE_TEXT, "text");
    }
    return meaning;
  }

  /** Returns the findings that components name by their codes or words; nothing is taken. */
  Set<String> named(List<Place> components) {
    Set<String> named = new HashSet<>();
    for (Place component : components) {
      for (Place code : component.child("code").stream().toList()) {
        vocabulary.titled(code.text("text")).flatMap(Effect::finding).ifPresent(named::add);
        Coding.of(code, vocabulary::knows, vocabulary).stream()
            .flatMap(coding -> vocabulary.effect(coding.token()).stream())
            .flatMap(effect -> effect.finding().stream())
            .forEach(named::add);
      }
    }
    return named;
  }

  /** A code that says less than a finding may say what a less exact one says. */
  private void wider(Meaning meaning, List<Coding> unsure, Place code) throws Refusal {
    for (Coding coding : unsure) {
      Optional<Effect> effect = vocabulary.habits().wider(coding.token());
      if (effect.isPresent() && coding.sure()) {
        meaning.add(effect.get(), coding.place().at());
        coding.take(effect.get().rule(), Optional.of(effect.get().display()));
        beside.add(meaning, code);
      }
    }
  }

  /** Refuses components under a code that makes something else of them, such as a target. */
  void refuseOtherwise(Place observation, Meaning meaning) throws Refusal {
    Optional<Place> code = observation.child("code");
    if (code.isPresent()) {
      beside.refuseOtherwise(meaning, code.get());
    }
  }

  /** Adds what the method, the device and the components that ask and answer say. */
  void around(Place observation, Meaning meaning) throws Refusal {
    Optional<Place> method = observation.child("method");
    if (method.isPresent()) {
      conditions(meaning, method.get());
      words.method(meaning, method.get());
    }
    beside.refuseOtherwise(meaning, method.stream().toList());
    beside.refuseOtherwise(meaning, observation.list("category"));
    words.refuseOther(meaning, observation.list("category"));
    words.refuseOther(meaning, observation.list("interpretation"));
    if (meaning.finding().equals(Optional.of("refraction"))) {
      Pieces.refuseGlasses(vocabulary, observation.value());
    }
    Optional<Place> device = observation.child("device");
    if (device.isPresent()) {
      device(meaning, observation, device.get());
      beside.refuseWord(meaning, device.get().text("display"), device.get().at());
      String number = device.get().child("identifier").map(id -> id.text("value")).orElse("");
      beside.refuseWord(meaning, number, device.get().at());
      words.device(meaning, device.get());
    }
  }

  /** Takes a component that asks for a condition; says whether it was one. */
  boolean question(Place component, Meaning meaning) throws Refusal {
    Optional<Coding> asked = asked(component);
    if (asked.isEmpty()) {
      return words.component(component, meaning) || isAnswered(component, meaning);
    }
    Optional<Place> answer = component.child("valueCodeableConcept");
    Optional<Boolean> truth = Truth.of(component);
    if (truth.isPresent()) {
      Place bool = component.child("valueBoolean").orElseThrow();
      return yes(meaning, asked.get(), bool, truth.get());
    }
    if (answer.isEmpty()) {
      return false;
    }
    for (Coding coding : Coding.of(answer.get(), this::isAnswer, vocabulary)) {
      Optional<String> presence = vocabulary.habits().answer("presence", coding.token());
      if (presence.isPresent()) {
        return yes(meaning, asked.get(), coding.place(), presence.get().equals("present"));
      }
    }
    if (conditions(meaning, answer.get())) {
      asked.get().take(RuleId.CONDITION_CODED, Optional.empty());
      return true;
    }
    return false;
  }

  /** Takes the code of a condition as an answer, whatever the component is called. */
  private boolean isAnswered(Place component, Meaning meaning) throws Refusal {
    Optional<Place> code = component.child("code");
    Optional<Place> answer = component.child("valueCodeableConcept");
    if (code.isEmpty() || answer.isEmpty() || isKnown(code.get()) || namesSide(code.get())) {
      return false;
    }
    refuseOtherwise(component, meaning);
    return conditions(meaning, answer.get());
  }

  /** The lens of one eye says nothing of the other. */
  private boolean namesSide(Place code) {
    Words habits = vocabulary.habits().words();
    return habits.namesSide(code.text("text"))
        || code.list("coding").stream().anyMatch(c -> habits.namesSide(c.text("display")));
  }

  /** Returns true if a name is known, or says that something was not so. */
  private boolean isKnown(Place code) {
    Words habits = vocabulary.habits().words();
    return habits.denies(code.text("text"))
        || code.list("coding").stream()
            .anyMatch(
                coding ->
                    habits.denies(coding.text("display"))
                        || vocabulary
                            .display(coding.text("system") + "|" + coding.text("code"))
                            .isPresent());
  }

  private boolean isAnswer(String token) {
    return isCondition(token) || vocabulary.habits().answer("presence", token).isPresent();
  }

  private boolean yes(Meaning meaning, Coding asked, Place answer, boolean yes) throws Refusal {
    Optional<Effect> effect = vocabulary.effect(asked.token()).filter(Conditions::isCondition);
    if (effect.isEmpty()) {
      return false;
    }
    if (yes) {
      meaning.add(effect.get(), asked.place().at());
    }
    asked.take(RuleId.CONDITION_CODED, Optional.of(effect.get().display()));
    answer.takeAll(RuleId.CONDITION_CODED);
    return true;
  }

  private Optional<Coding> asked(Place component) {
    Predicate<String> question = vocabulary.habits()::isQuestion;
    return component.child("code").stream()
        .flatMap(code -> Coding.of(code, question, vocabulary).stream())
        .filter(coding -> coding.sure() && question.test(coding.token()))
        .findFirst();
  }

  private void device(Meaning meaning, Place observation, Place device) throws Refusal {
    Optional<Raw.Obj> resource = neighbours.find(observation.value(), device.text("reference"));
    if (resource.isEmpty()) {
      return;
    }
    Optional<Raw.Obj> type = resource.get().object("type");
    for (Raw.Obj coding : type.map(t -> t.objects("coding")).orElse(List.of())) {
      String token = coding.string("system").orElse("") + "|" + coding.string("code").orElse("");
      Optional<Effect> effect = vocabulary.effect(token).filter(Conditions::isCondition);
      if (effect.isPresent()) {
        meaning.add(effect.get(), device.at());
        observation.ledger().used(RuleId.CONDITION_DEVICE);
      } else {
        deviceWords(meaning, device, coding.string("display").orElse(""));
      }
    }
    deviceWords(meaning, device, type.flatMap(t -> t.string("text")).orElse(""));
    for (Raw.Obj name : resource.get().objects("deviceName")) {
      deviceWords(meaning, device, name.string("name").orElse(""));
    }
  }

  private void deviceWords(Meaning meaning, Place device, String said) throws Refusal {
    words.device(meaning, device, said);
    beside.refuseWord(meaning, said, device.at());
  }

  private boolean conditions(Meaning meaning, Place concept) throws Refusal {
    boolean any = false;
    for (Coding coding : Coding.of(concept, this::isCondition, vocabulary)) {
      Optional<Effect> effect = vocabulary.effect(coding.token()).filter(Conditions::isCondition);
      if (effect.isPresent() && coding.sure()) {
        meaning.add(effect.get(), coding.place().at());
        coding.take(RuleId.CONDITION_CODED, Optional.of(effect.get().display()));
        any = true;
      }
    }
    return any;
  }

  private boolean isCondition(String token) {
    return vocabulary.effect(token).filter(Conditions::isCondition).isPresent();
  }

  /** A condition says how an acuity was tested; the code of a finding as such does not. */
  private static boolean isCondition(Effect effect) {
    return effect.rule().equals(RuleId.CONDITION_CODED)
        || effect.finding().equals(Optional.of("pinhole-acuity"));
  }

  private void add(Meaning meaning, Coding coding) throws Refusal {
    Optional<Effect> effect = vocabulary.effect(coding.token());
    if (effect.isPresent()) {
      meaning.add(effect.get(), coding.place().at());
      coding.take(effect.get().rule(), Optional.of(effect.get().display()));
      return;
    }
    Optional<CodedStatement> statement = vocabulary.habits().statement(coding.token());
    if (statement.isPresent()) {
      meaning.statement(statement.get(), coding.place().at());
      coding.take(RuleId.FINDING_IN_CODE, Optional.of(statement.get().display()));
      return;
    }
    Optional<Effect> group = vocabulary.habits().group(coding.token());
    if (group.isPresent()) {
      meaning.group(group.get(), coding.place().at());
      coding.take(RuleId.CODE_GROUP, Optional.of(group.get().display()));
    }
  }

  private void corroborated(Meaning meaning, Coding coding) throws Refusal {
    Optional<Effect> effect = vocabulary.effect(coding.token());
    Optional<String> finding = meaning.finding();
    if (effect.isPresent() && finding.isPresent() && effect.get().finding().equals(finding)) {
      meaning.add(effect.get(), coding.place().at());
      coding.take(effect.get().rule(), Optional.of(effect.get().display()));
    }
  }
}
