package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Surroundings;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;

/**
 * Refuses an observation of which an element beside the value may change what it means: a label, a
 * category, an interpretation, a specimen, or what it was computed from.
 */
final class ContextCheck {

  private static final Pattern TYPE = Pattern.compile("(?:.*/)?([A-Z][A-Za-z]+)/[^/]+.*");

  /** HL7 v3 ObservationInterpretation: POS and NEG, by code and name. */
  private static final Set<String> NAMES_OF_PRESENCE = Set.of("pos", "neg", "positive", "negative");

  private final Surroundings known;
  private final Words words;
  private final Place observation;

  ContextCheck(Vocabulary vocabulary, Place observation) {
    this.known = vocabulary.habits().surroundings();
    this.words = vocabulary.habits().words();
    this.observation = observation;
  }

  /** Refuses what is not known as harmless beside the facts. */
  void check(List<Fact<?>> facts) throws Refusal {
    labels();
    for (Place category : observation.list("category")) {
      category(category);
    }
    interpretations(observation, facts);
    for (Place component : observation.list("component")) {
      interpretations(component, facts);
    }
    for (Place source : observation.list("derivedFrom")) {
      source(source);
    }
    if (observation.has("specimen")) {
      throw Qualifiers.unread("/specimen", "a specimen");
    }
  }

  private void labels() throws Refusal {
    for (Place meta : observation.child("meta").stream().toList()) {
      for (String list : List.of("tag", "security")) {
        for (Place label : meta.list(list)) {
          if (known.isLabelOfDoubt(token(label)) || doubts(label)) {
            throw Qualifiers.unread(label.at(), "the label " + label.text("code"));
          }
        }
      }
      profiles(meta);
    }
  }

  private boolean doubts(Place label) {
    return Stream.of(label.text("code"), label.text("display"))
        .anyMatch(text -> words.doubts(text) || words.otherwiseNamed(text, "").isPresent());
  }

  /** The name of a profile may say that it is one of targets. */
  private void profiles(Place meta) throws Refusal {
    for (Raw profile : meta.value().list("profile")) {
      String url = profile.string().orElse("");
      if (words.otherwise(url.substring(url.lastIndexOf('/') + 1), "").isPresent()) {
        throw Qualifiers.unread(meta.at() + "/profile", "the profile " + url);
      }
    }
  }

  private void category(Place category) throws Refusal {
    for (Place coding : category.list("coding")) {
      String display = coding.text("display");
      String words = display.isBlank() ? coding.text("code") : display;
      if (!known.isCategory(token(coding)) && !categorises(words)) {
        throw Qualifiers.unread(coding.at(), "a category that is not understood");
      }
    }
    String text = category.text("text");
    if (!text.isBlank() && !categorises(text)) {
      throw Qualifiers.unread(category.at() + "/text", "a category that is not understood");
    }
  }

  /** The eye in a category is compared with that of the value. */
  private boolean categorises(String text) {
    String rest = SideText.without(text);
    return rest.isBlank() || known.categorises(rest);
  }

  private void interpretations(Place holder, List<Fact<?>> facts) throws Refusal {
    for (Place interpretation : holder.list("interpretation")) {
      boolean read =
          interpretation.list("coding").stream().allMatch(coding -> isHarmless(coding, facts));
      String text = interpretation.text("text");
      if (!read || !(text.isBlank() || known.interprets(text))) {
        throw Qualifiers.unread(interpretation.at(), "an interpretation that is not understood");
      }
    }
  }

  private boolean isHarmless(Place coding, List<Fact<?>> facts) {
    String code = coding.text("code");
    boolean published = coding.text("system").contains("ObservationInterpretation");
    boolean hl7 = published || coding.text("system").contains("v2-0078");
    String words = coding.text("display").isBlank() ? code : coding.text("display");
    return hl7
        ? (known.isInterpretation(code) && (words.equals(code) || known.interprets(words)))
            || (agrees(code, facts) && NAMES_OF_PRESENCE.contains(words.toLowerCase(Locale.ROOT)))
        : known.interprets(words);
  }

  /** Positive and negative fit only the presence that they say. */
  private static boolean agrees(String code, List<Fact<?>> facts) {
    Optional<Presence> said =
        code.equals("POS")
            ? Optional.of(Presence.PRESENT)
            : code.equals("NEG") ? Optional.of(Presence.ABSENT) : Optional.empty();
    return said.isPresent() && facts.stream().allMatch(fact -> isAnswer(fact, said.get().word()));
  }

  private static boolean isAnswer(Fact<?> fact, String word) {
    return fact.panel().flatMap(panel -> panel.value()).stream()
        .anyMatch(
            value -> value instanceof Datum.Coded coded && coded.concept().word().equals(word));
  }

  private void source(Place source) throws Refusal {
    String type = source.text("type");
    String named = TYPE.matcher(source.text("reference")).replaceFirst("$1");
    if (!known.isSource(type.isEmpty() ? named : type)) {
      throw Qualifiers.unread(source.at(), "a value that was derived from another resource");
    }
  }

  private static String token(Place coding) {
    return coding.text("system") + "|" + coding.text("code");
  }
}
