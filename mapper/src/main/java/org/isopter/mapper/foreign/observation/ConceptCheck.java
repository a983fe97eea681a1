package org.isopter.mapper.foreign.observation;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;

/**
 * Refuses what stands in one concept beside a code that was read, and was not read itself: another
 * published code may be narrower, and words may say more than the code.
 */
final class ConceptCheck {

  private static final String PRESENCE = "presence";

  private final Vocabulary vocabulary;
  private final Place observation;

  ConceptCheck(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
  }

  /** Refuses what was not read in the code, the body site, the method and the value. */
  void check() throws Refusal {
    code(observation);
    bodySite();
    Optional<Place> method = observation.child("method").filter(this::isTaken);
    if (method.isPresent()) {
      concept(method.get());
    }
    value(observation);
    for (Place component : observation.list("component")) {
      if (isTaken(component)) {
        code(component);
        value(component);
      }
    }
  }

  private void value(Place holder) throws Refusal {
    Optional<Place> value = holder.child("valueCodeableConcept");
    if (value.filter(this::isTaken).isPresent()) {
      concept(value.get());
    }
  }

  private void code(Place holder) throws Refusal {
    for (Place code : holder.child("code").stream().toList()) {
      boolean read = code.list("coding").stream().anyMatch(this::isTaken);
      for (Place coding : read ? code.list("coding") : List.<Place>of()) {
        boolean named = isNamed(coding.text("display"));
        if (!isTaken(coding) && !Coding.isLocal(coding) && !isKnown(coding) && !named) {
          throw Qualifiers.unread(coding.at(), "a second code that is not understood");
        }
      }
    }
  }

  /** Returns true if a display is the name of a finding; that it is the same was seen before. */
  private boolean isNamed(String display) {
    String bare = SideText.without(Vocabulary.withoutTag(display));
    return !bare.isBlank() && new CodeText(vocabulary).read(bare).isPresent();
  }

  private boolean isKnown(Place coding) {
    String token = Coding.single(coding, vocabulary::knows, vocabulary).token();
    return vocabulary.knows(token);
  }

  private void bodySite() throws Refusal {
    for (Place site : observation.child("bodySite").stream().toList()) {
      for (Place coding : site.list("coding")) {
        String display = coding.text("display");
        boolean words = !display.isBlank() && namesSite(display);
        boolean known = isTaken(coding) || isEye(coding);
        if (!words && !(known && display.isBlank())) {
          throw Qualifiers.unread(
              coding.at(), "a code beside that of the eye that is not understood");
        }
      }
      String text = site.text("text");
      if (!text.isBlank() && !namesSite(text)) {
        throw Qualifiers.unread(
            site.at() + "/text", "words beside the eye that are not understood");
      }
    }
  }

  private boolean isEye(Place coding) {
    Habits habits = vocabulary.habits();
    String token =
        Coding.single(coding, t -> habits.isEye(t) || habits.site(t).isPresent(), vocabulary)
            .token();
    boolean eye = habits.isEye(token) || habits.site(token).isPresent();
    return eye || habits.qualifier(token).isPresent();
  }

  private boolean namesSite(String text) {
    String rest = SideText.without(Vocabulary.withoutTag(text));
    return SideText.alone(text).isPresent()
        || rest.isBlank()
        || vocabulary.habits().surroundings().namesSite(rest);
  }

  /** Refuses a coding or a text that says anything else than the names of the codes beside it. */
  private void concept(Place concept) throws Refusal {
    Set<String> names = names(concept);
    for (Place coding : concept.list("coding")) {
      String display = coding.text("display");
      if (isTaken(coding) && saysElse(coding)) {
        throw Qualifiers.unread(coding.at(), "a name that says something else than its code");
      }
      boolean same = display.isBlank() ? Coding.isLocal(coding) : isNamed(names, display);
      if (!isTaken(coding) && !same) {
        throw Qualifiers.unread(coding.at(), "a second code that is not understood");
      }
    }
    Optional<Place> text = concept.child("text").filter(place -> !isTaken(place));
    if (text.isPresent()
        && !isNamed(names, concept.text("text"))
        && !saysTheSame(concept, concept.text("text"))) {
      throw Qualifiers.unread(text.get().at(), "words beside a code that are not understood");
    }
  }

  /** Returns true if the name that was sent is not that of the code, and doubts or denies it. */
  private boolean saysElse(Place coding) {
    String display = coding.text("display");
    boolean known =
        vocabulary
            .display(token(coding))
            .filter(name -> Vocabulary.sameName(name, display))
            .isPresent();
    if (isAnswer(coding)) {
      return false;
    }
    Words words = vocabulary.habits().words();
    return !known
        && (display.indexOf('?') >= 0
            || words.otherwiseNamed(display, "").isPresent()
            || words.doubts(display)
            || words.denies(display));
  }

  /** "No" denies nothing where it is the name of the code for it. */
  private boolean isAnswer(Place coding) {
    Habits habits = vocabulary.habits();
    Optional<String> said = habits.words().answer(PRESENCE, plain(coding.text("display")));
    String token = token(coding);
    return said.isPresent() && said.equals(habits.answer(PRESENCE, token));
  }

  /** Returns the names of the codings that were read: as they are known, and as they are sent. */
  private Set<String> names(Place concept) {
    Set<String> names = new HashSet<>();
    for (Place coding : concept.list("coding")) {
      String token = token(coding);
      if (isTaken(coding)) {
        names.add(plain(coding.text("display")));
        vocabulary.display(token).ifPresent(display -> names.add(plain(display)));
        vocabulary.habits().answer(PRESENCE, token).ifPresent(names::add);
      }
    }
    return names;
  }

  private boolean isNamed(Set<String> names, String text) {
    String plain = plain(text);
    Optional<String> answer = vocabulary.habits().words().answer(PRESENCE, plain);
    return names.contains(plain) || answer.filter(names::contains).isPresent();
  }

  /** Returns true if words say of how it was tested what a code that was read says. */
  private boolean saysTheSame(Place concept, String text) {
    List<Effect> said = new CodeText(vocabulary).conditions(text).orElse(List.of());
    List<Effect> coded =
        concept.list("coding").stream()
            .filter(this::isTaken)
            .flatMap(c -> vocabulary.effect(token(c)).stream())
            .toList();
    return !said.isEmpty()
        && said.stream().allMatch(effect -> coded.stream().anyMatch(code -> isSame(code, effect)));
  }

  private static boolean isSame(Effect code, Effect said) {
    boolean finding = said.finding().isEmpty() || said.finding().equals(code.finding());
    return finding && code.parts().entrySet().containsAll(said.parts().entrySet());
  }

  /** Returns a code with its system by the name that is known here. */
  private String token(Place coding) {
    return Coding.single(
            coding,
            token -> vocabulary.knows(token) || vocabulary.display(token).isPresent(),
            vocabulary)
        .token();
  }

  private boolean isTaken(Place place) {
    return place.ledger().hasTaken(place.at());
  }

  private static String plain(String display) {
    return CodeText.words(Vocabulary.withoutTag(display));
  }
}
