package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.value.Site;

/** Components whose code is an eye: each holds the value of the finding at that eye. */
final class EyeComponents {

  private static final String RULE = RuleId.COMPONENT_OF_EYE;

  private EyeComponents() {}

  /** Returns those of the components whose code is an eye or a side; nothing is taken. */
  static List<Place> of(Vocabulary vocabulary, List<Place> components) {
    return components.stream()
        .filter(c -> coding(vocabulary, c).isPresent() || word(vocabulary, c).isPresent())
        .toList();
  }

  /** Returns the eye of a component and those around it; both eyes around say nothing against. */
  static List<Meaning.Side> sides(
      Vocabulary vocabulary, Place component, List<Meaning.Side> around) {
    List<Meaning.Side> sides = new ArrayList<>(around);
    sides.removeIf(side -> side.site() == Site.BOTH);
    Optional<Coding> coding = coding(vocabulary, component);
    Optional<Site> coded = coding.flatMap(c -> eye(vocabulary, c.token()));
    coded.ifPresent(eye -> sides.add(new Meaning.Side(eye, coding.get().place().at(), RULE)));
    Optional<Word> word = word(vocabulary, component);
    word.ifPresent(named -> sides.add(new Meaning.Side(named.eye(), component.at(), RULE)));
    return sides;
  }

  /** Takes the code of a component. */
  static void take(Vocabulary vocabulary, Place component) {
    coding(vocabulary, component).ifPresent(coding -> coding.take(RULE, Optional.empty()));
    word(vocabulary, component).ifPresent(word -> word.place().take(RULE, word.name()));
  }

  /** Returns what the words of a component say beside its eye, together with what is asked. */
  static Meaning meaning(Vocabulary vocabulary, Place component, Meaning asked) throws Refusal {
    Meaning meaning = asked.copy();
    Optional<Word> word = word(vocabulary, component);
    for (Effect effect : word.map(Word::conditions).orElse(List.of())) {
      if (!vocabulary.fits(asked.finding().orElse(""), effect)) {
        throw Refusal.of(
            Why.CODES_DISAGREE,
            component.at() + "/code",
            "\"" + word.map(w -> w.place().text(w.name())).orElse("") + "\"",
            "words that fit the finding");
      }
      meaning.add(effect, component.at());
    }
    return meaning;
  }

  /** The member of a code that names an eye, and otherwise only how it was tested. */
  private record Word(Place place, String name, Site eye, List<Effect> conditions) {
    static Optional<Word> of(Vocabulary vocabulary, Place place, String name) {
      String text = place.text(name);
      Optional<Site> whole = SideText.wholly(text);
      return whole
          .or(() -> SideText.only(text))
          .flatMap(
              eye ->
                  new CodeText(vocabulary)
                      .conditions(whole.isPresent() ? "" : SideText.without(text))
                      .map(conditions -> new Word(place, name, eye, conditions)));
    }
  }

  private static Optional<Word> word(Vocabulary vocabulary, Place component) {
    Optional<Place> code = component.child("code");
    Optional<Place> local =
        code.map(c -> c.list("coding")).filter(list -> list.size() == 1).map(list -> list.get(0));
    return code.flatMap(c -> Word.of(vocabulary, c, "text"))
        .or(() -> local.filter(Coding::isLocal).flatMap(c -> Word.of(vocabulary, c, "display")))
        .or(() -> local.filter(Coding::isLocal).flatMap(c -> Word.of(vocabulary, c, "code")));
  }

  private static Optional<Coding> coding(Vocabulary vocabulary, Place component) {
    return component.child("code").stream()
        .flatMap(c -> Coding.of(c, t -> eye(vocabulary, t).isPresent(), vocabulary).stream())
        .filter(coding -> coding.sure() && eye(vocabulary, coding.token()).isPresent())
        .findFirst();
  }

  private static Optional<Site> eye(Vocabulary vocabulary, String token) {
    Habits habits = vocabulary.habits();
    return habits.site(token).or(() -> habits.qualifier(token));
  }
}
