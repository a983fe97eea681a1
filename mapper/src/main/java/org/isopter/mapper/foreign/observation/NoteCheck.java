package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.document.NarrativeWords;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** Refuses an observation whose notes have words that may change what its value means. */
final class NoteCheck {

  /** A Greek letter stands for a unit or an angle; two of them are a word. */
  private static final Pattern GREEK = Pattern.compile("\\p{IsGreek}{2,}");

  /** Narratives that differ in their numbers alone are read once. */
  private static final Pattern NUMBER = Pattern.compile("[\\d.,:]+");

  /** What an observation refers to under a name, and which is of the same eye. */
  private static final List<String> NAMED =
      List.of("basedOn", "partOf", "hasMember", "derivedFrom");

  /** Latin letters, and single Greek ones. */
  private static final Set<Character.UnicodeScript> LETTERS =
      Set.of(
          Character.UnicodeScript.LATIN,
          Character.UnicodeScript.GREEK,
          Character.UnicodeScript.COMMON);

  private static final String NOTE = "a note with words that may change the value";

  private final Vocabulary vocabulary;
  private final Place observation;

  NoteCheck(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
  }

  /** Refuses a note of which a word is not known, or may change the value. */
  void check(Fact<?> fact) throws Refusal {
    for (Place note : observation.list("note")) {
      if (!isReadWhole(fact, note.text("text"))) {
        throw Qualifiers.unread(note.at(), "a note with words that are not understood");
      }
      note(fact, note.at(), note.text("text"));
    }
    narrative(fact);
    for (Place other : named()) {
      String said = other.text("display") + other.text("text");
      if (isOfAnotherEye(said, fact.site())) {
        throw Qualifiers.unread(other.at(), "the name of something of another eye");
      }
    }
    for (Place range : observation.list("referenceRange")) {
      if (vocabulary.habits().words().doubts(range.text("text"))) {
        throw Qualifiers.unread(range.at(), "a range with words that doubt the value");
      }
    }
  }

  /** Returns what may name an eye beside the code and the body site. */
  private List<Place> named() {
    List<Place> named = new ArrayList<>(observation.list("referenceRange"));
    NAMED.forEach(name -> named.addAll(observation.list(name)));
    observation.child("device").ifPresent(named::add);
    for (Place category : observation.list("category")) {
      named.add(category);
      named.addAll(category.list("coding"));
    }
    observation.child("dataAbsentReason").ifPresent(named::add);
    return named;
  }

  /** What a sender made of the same data names the same eye, unless the two were mixed up. */
  private void narrative(Fact<?> fact) throws Refusal {
    String text = NarrativeWords.of(observation.value());
    if (NarrativeWords.isMore(observation.value())) {
      note(fact, "/text/div", text);
    }
    String words = NUMBER.matcher(text).replaceAll(" ");
    if (isOfSomethingElse(words, fact.finding().id()) || isOfAnotherEye(words, fact.site())) {
      throw Qualifiers.unread("/text/div", "a narrative that does not fit the value");
    }
  }

  /** The eye, and the conditions of an acuity, are compared with those of the fact. */
  private boolean isReadWhole(Fact<?> fact, String text) {
    Words words = vocabulary.habits().words();
    boolean acuity = vocabulary.isAcuity(Optional.of(fact.finding().id()));
    String rest = text.indexOf('?') < 0 ? SideText.without(text) : text;
    return words.areHarmless(acuity ? words.withoutConditions(rest) : rest);
  }

  /** Refuses the name or the range of a part that is of another eye. */
  void checkPart(Fact<?> fact, Place component) throws Refusal {
    List<Place> named = new ArrayList<>(component.list("referenceRange"));
    component
        .child("code")
        .ifPresent(
            code -> {
              named.add(code);
              named.addAll(code.list("coding"));
            });
    for (Place place : named) {
      if (isOfAnotherEye(place.text("text") + place.text("display"), fact.site())) {
        throw Qualifiers.unread(place.at(), "a part of another eye");
      }
    }
  }

  /** Refuses a note that makes something else of a finding of that name. */
  void checkFor(String finding) throws Refusal {
    for (Place note : observation.list("note")) {
      if (isOfSomethingElse(note.text("text"), finding)) {
        throw Qualifiers.unread(note.at(), NOTE);
      }
    }
  }

  /** Refuses another name or form of what was found that makes something else of it. */
  void checkName(Fact<?> fact, String at, String text) throws Refusal {
    checkNameFor(fact.finding().id(), at, text);
    if (isOfAnotherEye(text, fact.site()) || isTestedOtherwise(fact, text)) {
      throw Qualifiers.unread(at, "words that do not fit the value");
    }
  }

  /** Refuses another name that makes something else of a finding of that name. */
  void checkNameFor(String finding, String at, String text) throws Refusal {
    Words words = vocabulary.habits().words();
    if (words.otherwiseNamed(text, finding).isPresent() || words.doubts(text)) {
      throw Qualifiers.unread(at, "words that do not fit the value");
    }
  }

  private boolean isTestedOtherwise(Fact<?> fact, String text) {
    Words words = vocabulary.habits().words();
    boolean acuity = vocabulary.isAcuity(Optional.of(fact.finding().id()));
    return (acuity && words.conditionsIn(text).stream().anyMatch(e -> !isSaid(fact, e)))
        || (isDistance(fact) && words.namesOtherAcuity(text).isPresent());
  }

  private boolean isOfSomethingElse(String text, String finding) {
    Words words = vocabulary.habits().words();
    return words.otherwise(text, finding).isPresent() || words.doubts(text);
  }

  private void note(Fact<?> fact, String at, String text) throws Refusal {
    boolean changes =
        isOfSomethingElse(text, fact.finding().id())
            || isTestedOtherwise(fact, text)
            || isOfAnotherEye(text, fact.site())
            || OtherNumbers.in(text, fact)
            || isInAnotherScript(text);
    if (changes) {
      // What somebody wrote of a patient is not quoted.
      throw Qualifiers.unread(at, NOTE);
    }
  }

  private static boolean isDistance(Fact<?> fact) {
    return fact.finding().id().equals("distance-acuity");
  }

  /** In other letters we know so few words that "target" and "left" would be read over. */
  private boolean isInAnotherScript(String text) {
    boolean latin =
        text.codePoints()
            .filter(Character::isLetter)
            .mapToObj(Character.UnicodeScript::of)
            .allMatch(LETTERS::contains);
    return (!latin || GREEK.matcher(text).find()) && !vocabulary.isFamiliar(text);
  }

  /** Returns true if the fact says itself what a phrase says. */
  private static boolean isSaid(Fact<?> fact, Effect effect) {
    Map<String, Outcome<Datum>> parts = fact.panel().map(EncodedValue::parts).orElse(Map.of());
    boolean same = effect.finding().map(fact.finding().id()::equals).orElse(true);
    return same
        && effect.parts().entrySet().stream()
            .allMatch(
                said ->
                    parts.get(said.getKey()) instanceof Outcome.Found<Datum> found
                        && found.value() instanceof Datum.Coded coded
                        && coded.concept().word().equals(said.getValue()));
  }

  private static boolean isOfAnotherEye(String text, Site site) {
    Set<Site> named = SideText.in(text);
    return site != Site.BOTH && !named.isEmpty() && !named.contains(site);
  }
}
