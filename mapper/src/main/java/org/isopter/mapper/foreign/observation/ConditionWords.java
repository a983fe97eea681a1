package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Truth;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;

/** Takes words that say how something was tested: the method's, the device's, a component's. */
final class ConditionWords {

  private static final String RULE = RuleId.CONDITION_TEXT;
  private static final String UNAIDED = "unaided";

  private final Vocabulary vocabulary;
  private final CodeText text;
  private final Qualifiers qualifiers;
  private final WordsBeside beside;

  ConditionWords(Vocabulary vocabulary, Qualifiers qualifiers) {
    this.vocabulary = vocabulary;
    this.qualifiers = qualifiers;
    this.text = new CodeText(vocabulary);
    this.beside = new WordsBeside(vocabulary);
  }

  /** Takes what the method says in words. */
  void method(Meaning meaning, Place method) throws Refusal {
    add(meaning, method, "text", true);
    for (Place coding : method.list("coding")) {
      if (Coding.isLocal(coding)) {
        add(meaning, coding, "display", true);
      }
    }
  }

  /** Reads what the name of the device says; it stays the name of the instrument. */
  void device(Meaning meaning, Place device) throws Refusal {
    add(meaning, device, "display", false);
  }

  /** Reads a name that the resource of the device has. */
  void device(Meaning meaning, Place device, String name) throws Refusal {
    added(meaning, device, name, device.at());
  }

  /** Refuses an acuity of which a list of concepts says in words that it may be another. */
  void refuseOther(Meaning meaning, List<Place> concepts) throws Refusal {
    for (Place concept : concepts) {
      beside.refuseOtherAcuity(meaning, concept.text("text"), concept.at());
      for (Place coding : concept.list("coding")) {
        beside.refuseOtherAcuity(meaning, coding.text("display"), coding.at());
      }
    }
  }

  /** Takes a component whose words ask for a condition; says whether it was one. */
  boolean component(Place component, Meaning meaning) throws Refusal {
    Optional<Named> asked = component.child("code").flatMap(Named::of);
    if (asked.isEmpty() || component.has("dataAbsentReason")) {
      return false;
    }
    Optional<Boolean> truth = truth(component);
    Optional<List<Effect>> condition = known(meaning, asked.get().words());
    if (truth.isPresent() && condition.isPresent()) {
      return yes(component, asked.get(), condition.get(), meaning, truth.get());
    }
    Optional<List<Effect>> none = known(meaning, UNAIDED);
    if (!truth.orElse(true) && none.isPresent() && isNone(asked.get().words(), "no")) {
      return yes(component, asked.get(), none.get(), meaning, true);
    }
    if (truth.orElse(false)) {
      beside.refuseOtherAcuity(meaning, asked.get().words(), asked.get().place().at());
    }
    if (!vocabulary.habits().words().asksForCondition(CodeText.words(asked.get().words()))) {
      return false;
    }
    return answered(component, asked.get(), meaning);
  }

  private boolean answered(Place component, Named asked, Meaning meaning) throws Refusal {
    Optional<Named> answer =
        component
            .child("valueCodeableConcept")
            .flatMap(Named::of)
            .or(() -> Named.of(component, "valueString"));
    Optional<List<Effect>> said =
        answer.isPresent() ? known(meaning, answer.get().words()) : Optional.empty();
    if (said.isEmpty() && answer.filter(a -> isNone(asked.words(), a.words())).isPresent()) {
      said = known(meaning, UNAIDED);
    }
    if (said.isEmpty()) {
      if (answer.isPresent()) {
        beside.refuseOtherAcuity(meaning, answer.get().words(), component.at());
      }
      return false;
    }
    for (Effect effect : said.get()) {
      meaning.add(effect, component.at());
    }
    asked.take();
    answer.get().take();
    return true;
  }

  private boolean isNone(String asked, String answer) {
    String question = CodeText.words(asked);
    return answer.indexOf('?') < 0
        && vocabulary.habits().words().saysNoCorrection(question, CodeText.words(answer));
  }

  private boolean yes(
      Place component, Named asked, List<Effect> condition, Meaning meaning, boolean yes)
      throws Refusal {
    if (!yes) {
      // That something was not so is no condition of the catalogue; it goes along.
      // What was not at distance was near, which the value alone does not say.
      if (condition.stream().noneMatch(e -> e.finding().equals(Optional.of("distance-acuity")))) {
        qualifiers.understood(component);
      }
      return false;
    }
    for (Effect effect : condition) {
      meaning.add(effect, component.at());
    }
    asked.take();
    component.take(RULE, "valueBoolean", "valueString");
    component.child("valueCodeableConcept").ifPresent(concept -> concept.takeAll(RULE));
    return true;
  }

  /** Yes or no as a truth, as a code or as a word. */
  private Optional<Boolean> truth(Place component) {
    Optional<Boolean> truth = Truth.of(component);
    if (truth.isPresent()) {
      return truth;
    }
    Optional<Place> concept = component.child("valueCodeableConcept");
    String words = component.text("valueString") + concept.map(c -> c.text("text")).orElse("");
    Optional<Boolean> said = Truth.ofWord(words);
    Optional<Boolean> coded =
        concept.stream().flatMap(c -> c.list("coding").stream()).flatMap(this::coded).findFirst();
    boolean agree = coded.isEmpty() || said.isEmpty() || coded.equals(said);
    return agree ? coded.or(() -> said) : Optional.empty();
  }

  private Stream<Boolean> coded(Place coding) {
    String token = coding.text("system") + "|" + coding.text("code");
    return vocabulary.habits().answer("presence", token).map("present"::equals).stream();
  }

  private void add(Meaning meaning, Place place, String name, boolean take) throws Refusal {
    if (added(meaning, place, place.text(name), PlacedLeaf.step(place.at(), name)) && take) {
      place.take(RULE, name);
    }
  }

  /** Adds what a name says; returns false where it says nothing that is known. */
  private boolean added(Meaning meaning, Place place, String words, String at) throws Refusal {
    Optional<List<Effect>> said = known(meaning, words);
    if (said.isEmpty()) {
      beside.refuseOtherAcuity(meaning, words, at);
      return false;
    }
    for (Effect effect : said.get()) {
      meaning.add(effect, at);
      place.ledger().used(RULE);
    }
    return true;
  }

  /** Returns what words say that fit the finding; nothing where they say nothing of it. */
  private Optional<List<Effect>> known(Meaning meaning, String words) throws Refusal {
    Optional<String> finding = meaning.finding();
    if (finding.isEmpty()) {
      return Optional.empty();
    }
    return text.conditions(words)
        .filter(said -> !said.isEmpty())
        .filter(said -> said.stream().allMatch(e -> vocabulary.fits(finding.get(), e)))
        .filter(said -> said.stream().allMatch(e -> e.site().isEmpty() && e.unit().isEmpty()));
  }

  /** A member that names something in words. */
  private record Named(Place place, String name) {

    /** Returns the words of a concept: its text, or the display of its only, local coding. */
    static Optional<Named> of(Place concept) {
      Optional<Named> text = of(concept, "text");
      List<Place> codings = concept.list("coding");
      boolean published = codings.stream().anyMatch(coding -> !Coding.isLocal(coding));
      if (published) {
        return Optional.empty();
      }
      return text.or(() -> codings.size() == 1 ? of(codings.get(0), "display") : Optional.empty());
    }

    static Optional<Named> of(Place place, String name) {
      return place.text(name).isBlank() ? Optional.empty() : Optional.of(new Named(place, name));
    }

    String words() {
      return place.text(name);
    }

    void take() {
      place.take(RULE, name);
    }
  }
}
